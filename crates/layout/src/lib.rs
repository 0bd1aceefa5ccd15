//! Which markings, where: the choice, its bound, its audit
