//! Spindle speed from surface speed, and back; feed rate, and the time a tool cuts.
//!
//! The time leaves out setting up, withdrawing to clear swarf, and changing tools.

use std::f64::consts::PI;

use crate::tables::source::Source;
use crate::units::{Frequency, INCH_MM, Length, Time, Velocity, in_metres_per_minute, inch};

/// The spindle speed that gives a surface speed at a diameter, n = v/(π d).
///
/// # Units
/// The diameter must be more than nothing.
///
/// # Source
/// Machinery's Handbook 31st ed. p. 2178.
///
/// # Examples
/// A ¼ in tap at 60 ft/min turns at 917 rpm; the handbook prints 916.8 with π rounded.
/// ```
/// use holewright_core::calc::cutting_speed::spindle_speed;
/// use holewright_core::units::{in_rpm, inch, metres_per_minute};
/// let feet_per_minute = |feet: f64| metres_per_minute(feet * 0.3048);
/// assert!((in_rpm(spindle_speed(feet_per_minute(60.0), inch(0.25))) - 916.8).abs() < 0.1);
/// // ½ in at 80 ft/min: 611; 0.06 in at 55 ft/min: 3503 (printed to 0.2 %).
/// assert!((in_rpm(spindle_speed(feet_per_minute(80.0), inch(0.5))) - 611.0).abs() < 1.0);
/// assert!((in_rpm(spindle_speed(feet_per_minute(55.0), inch(0.06))) / 3503.0 - 1.0).abs() < 0.002);
/// ```
#[must_use]
pub fn spindle_speed(surface: Velocity, diameter: Length) -> Frequency {
    surface / (diameter * PI)
}

/// The surface speed a spindle speed gives at a diameter, v = π d n.
///
/// # Examples
/// ```
/// use holewright_core::calc::cutting_speed::{spindle_speed, surface_speed};
/// use holewright_core::units::{in_metres_per_minute, metres_per_minute, mm};
/// let back = surface_speed(spindle_speed(metres_per_minute(25.0), mm(2.7)), mm(2.7));
/// assert!((in_metres_per_minute(back) - 25.0).abs() < 1e-9);
/// ```
#[must_use]
pub fn surface_speed(spindle: Frequency, diameter: Length) -> Velocity {
    diameter * PI * spindle
}

/// The diameter at which a spindle speed gives a surface speed, d = v/(π n).
///
/// # Units
/// The spindle must turn.
///
/// # Examples
/// 80 ft/min at 611 rpm is a ½ in drill (the example of [`spindle_speed`], turned round).
/// ```
/// use holewright_core::calc::cutting_speed::diameter_for;
/// use holewright_core::units::{in_inch, metres_per_minute, rpm};
/// let drill = diameter_for(metres_per_minute(80.0 * 0.3048), rpm(611.0));
/// assert!((in_inch(drill) - 0.5).abs() < 0.001);
/// ```
#[must_use]
pub fn diameter_for(surface: Velocity, spindle: Frequency) -> Length {
    surface / (spindle * PI)
}

/// A surface speed in feet a minute, as older tables print it.
///
/// # Examples
/// ```
/// use holewright_core::{calc::cutting_speed::feet_per_minute, units::metres_per_minute};
/// assert!((feet_per_minute(metres_per_minute(24.384)) - 80.0).abs() < 1e-9);
/// ```
#[must_use]
pub const fn feet_per_minute(surface: Velocity) -> f64 {
    in_metres_per_minute(surface) * 1000.0 / (12.0 * INCH_MM)
}

/// How fast the tool goes in: feed per revolution times spindle speed.
///
/// # Source
/// Machinery's Handbook 31st ed. p. 2178.
///
/// # Examples
/// A 20 tpi tap at 920 rpm goes in at 46 in a minute.
/// ```
/// use holewright_core::{calc::cutting_speed::feed_rate, units::{in_metres_per_minute, inch, rpm}};
/// let rate = feed_rate(inch(1.0 / 20.0), rpm(920.0));
/// assert!((in_metres_per_minute(rate) - 46.0 * 0.0254).abs() < 1e-9);
/// ```
#[must_use]
pub fn feed_rate(feed: Length, spindle: Frequency) -> Velocity {
    feed * spindle
}

/// The time to go in so far at a feed a revolution, t = L/(f n).
///
/// # Units
/// The feed and the speed must be more than nothing.
///
/// # Source
/// The feed rate: Machinery's Handbook 31st ed. p. 2178; the time is the way over it.
///
/// # Examples
/// At 46 in a minute (20 tpi at 920 rpm, the handbook's example) an inch and a half takes just
/// under two seconds.
/// ```
/// use holewright_core::{calc::cutting_speed::cutting_time, units::{in_seconds, inch, rpm}};
/// let time = cutting_time(inch(1.5), inch(1.0 / 20.0), rpm(920.0));
/// assert!((in_seconds(time) - 60.0 * 1.5 / 46.0).abs() < 1e-9);
/// ```
#[must_use]
pub fn cutting_time(way: Length, feed: Length, spindle: Frequency) -> Time {
    way / feed_rate(feed, spindle)
}

/// A drill's feed a revolution in iron and steel by a rule of thumb: 0.001 in for each 1/16 in of
/// diameter, give or take [`THUMB_GIVE`].
///
/// # Source
/// Norseman Drill, Drill feeds and speeds.
///
/// # Examples
/// ```
/// use holewright_core::{calc::cutting_speed::thumb_feed, units::{inch, print}};
/// assert_eq!(print::inch(thumb_feed(inch(0.25)), 3), "0.004 in");
/// ```
#[must_use]
pub fn thumb_feed(diameter: Length) -> Length {
    diameter * (0.001 * 16.0)
}

/// How far [`thumb_feed`] may be off: 0.001 in.
pub const THUMB_GIVE: Length = inch(0.001);

/// Where [`thumb_feed`] was read.
pub const THUMB_SOURCE: Source = Source::published("a drill maker's feeds and speeds");
