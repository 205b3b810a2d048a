//! Every published check, in one binary.
