//! Reading the lengths people type, in any usual spelling.
