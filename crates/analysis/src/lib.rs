//! What a setup does and which parts give what is wanted: figures, curves and the answers drawn from them.
//!
//! Between the document and whatever shows it: window, paper and command line take every number from here, so the same
//! thing has the same value everywhere. Millimetres and degrees; signs are those of the solver.
