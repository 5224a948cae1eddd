//! The pages through `answer` alone.
