//! Published data and the tests that replay it.
