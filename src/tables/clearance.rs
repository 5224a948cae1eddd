//! Clearance holes as printed by ISO 273, ASME B18.2.8 and BS 4186.
