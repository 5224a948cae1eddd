//! When the last backup was made: a line in the data folder, for the metrics of the server. The database
//! would not do, since a backup writes nothing to it.

use std::fs;
use std::io::{self, Read, Write};
use std::path::{Path, PathBuf};

use super::manifest::utc;
use crate::db::FILE_NAME;
use crate::rules::clock::UnixSeconds;
use crate::whole_file::{WholeFile, give, with_suffix};

/// Behind the name of the database, as all that is ours in the folder.
const NAME: &str = ".last-backup";
/// More than a time needs.
const LONGEST: u64 = 64;

/// Notes down that one was made now.
pub(super) fn note_down(data: &Path, now: UnixSeconds) -> io::Result<()> {
    let mut file = WholeFile::begin(&place(data))?;
    writeln!(file.file(), "{}", utc(now))?;
    give(file.path(), &fs::metadata(data)?)?;
    file.finish()
}

/// When it was made; none where there was none, or nobody can tell.
#[must_use]
pub fn made_at(data: &Path) -> Option<UnixSeconds> {
    let mut text = String::new();
    fs::File::open(place(data)).ok()?.take(LONGEST).read_to_string(&mut text).ok()?;
    read(text.trim_end())
}

fn place(data: &Path) -> PathBuf {
    with_suffix(&data.join(FILE_NAME), NAME)
}

/// A time as [`utc`] writes it.
fn read(text: &str) -> Option<UnixSeconds> {
    let (date, time) = text.strip_suffix('Z')?.split_once('T')?;
    let [year, month, day] = three(date, '-')?;
    let [hour, minute, second] = three(time, ':')?;
    let part = |part: u32| u8::try_from(part).ok();
    let month = time::Month::try_from(part(month)?).ok()?;
    let date = time::Date::from_calendar_date(i32::try_from(year).ok()?, month, part(day)?).ok()?;
    let time = time::Time::from_hms(part(hour)?, part(minute)?, part(second)?).ok()?;
    Some(time::UtcDateTime::new(date, time).unix_timestamp())
}

fn three(text: &str, between: char) -> Option<[u32; 3]> {
    let numbers: Option<Vec<u32>> = text.split(between).map(|part| part.parse().ok()).collect();
    numbers?.try_into().ok()
}

#[cfg(test)]
mod tests {
    use super::{read, utc};

    #[test]
    fn a_time_is_read_as_it_is_written() {
        for seconds in [0, 1_800_000_000, 951_782_399, 4_102_444_800] {
            assert_eq!(read(&utc(seconds)), Some(seconds));
        }
        for text in ["", "Z", "2026-11-30", "2026-13-30T00:00:00Z", "2026-11-30T25:00:00Z", "TZ"] {
            assert_eq!(read(text), None, "{text}");
        }
    }
}
