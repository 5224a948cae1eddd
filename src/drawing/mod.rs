//! Dimensioned drawings as SVG.
