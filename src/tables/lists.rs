//! Published tapping-drill lists, by name: what the chart on the reader's wall says.
use crate::tables::source::Source;
use crate::tables::threads::SystemId;
use crate::units::Printed;
/// One row.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ListedDrill {
    /// The list's name.
    pub list: &'static str,
    /// System.
    pub system: SystemId,
    /// Size.
    pub size: &'static str,
    /// Diameter.
    pub drill: Printed,
    /// As the list names it.
    pub label: &'static str,
    /// Source.
    pub source: Source,
}
