"""A general rigid-body solver for a steered front axle, used to make reference tables.

Modules, each building on the ones before it:

* ``vectors``: three-vectors in numpy that also accept complex numbers,
* ``bodies``: positions of rigid bodies from translations and quaternions,
* ``constraints``: the equations a joint puts on them,
* ``continuation``: solving the equations and following a branch of solutions,
* ``axle``: a case file turned into bodies and constraints,
* ``figures``: what is read off a solved axle,
* ``tables``: sweeps over a case, gathered into a table.
"""
