//! A known propeller, measured again with noise.
