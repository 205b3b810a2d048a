//! The documents handed over: HTML always, PDF with the feature `pdf`.
