"""A steered front axle as a sketch of points under geometric constraints, closed by a general constraint solver.

Modules, each building on the ones before it:

* ``space``: plain three-vectors,
* ``sketch``: points and constraints, handed to the constraint solver,
* ``bodies``: rigid bodies, hinges and chassis lines as constraints,
* ``demand``: what is asked of the axle, and the road it stands on,
* ``suspensions``, ``drives``, ``wheels``: the points and constraints of every kind,
* ``linkage``: a case file turned into one sketch,
* ``continuation``: following the closed sketch from one demand to another,
* ``poses``: the poses that a table's rows belong to,
* ``comparison``: what is read off a pose, held against the table.
"""
