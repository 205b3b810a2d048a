//! The local page: the whole job of one folder, served on loopback.
