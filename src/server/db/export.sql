-- The file other programs take away: /reference.sqlite. Columns are added, never dropped or renamed.
-- Each column's unit stands at the end of its name, as in the JSON. `given` holds one JSON document.
PRAGMA user_version = 1;
BEGIN;

CREATE TABLE about (
    name  TEXT NOT NULL PRIMARY KEY,
    value TEXT NOT NULL
) STRICT, WITHOUT ROWID;
INSERT INTO about
SELECT 'made by', tables ->> 'program' FROM given
UNION ALL SELECT 'units', 'in the names of the columns: _mm, _in, _mm2, _deg, _percent, _m_per_min, _mm_per_rev'
UNION ALL SELECT 'sources', 'a source with words in brackets behind it was not read in its standard';

-- One row for each page of the reference: its address is "/" and the id.
CREATE TABLE reference_entry (
    id     TEXT NOT NULL PRIMARY KEY,
    kind   TEXT NOT NULL,
    slug   TEXT NOT NULL,
    title  TEXT NOT NULL,
    -- SHA-256 of the entry's figures: it changes when they do.
    digest TEXT NOT NULL
) STRICT, WITHOUT ROWID;
INSERT INTO reference_entry
SELECT value ->> 'id', value ->> 'kind', value ->> 'slug', value ->> 'title', value ->> 'digest'
FROM given, json_each(tables, '$.entries');

CREATE TABLE thread_system (
    id               TEXT NOT NULL PRIMARY KEY,
    name             TEXT NOT NULL,
    standard         TEXT NOT NULL,
    -- Included angle of the thread form.
    thread_angle_deg REAL NOT NULL
) STRICT, WITHOUT ROWID;
INSERT INTO thread_system
SELECT value ->> 'id', value ->> 'name', value ->> 'standard', value ->> 'thread_angle_deg'
FROM given, json_each(tables, '$.systems');

CREATE TABLE thread (
    system            TEXT NOT NULL REFERENCES thread_system (id),
    size              TEXT NOT NULL,
    designation       TEXT NOT NULL,
    pitch_mm          REAL NOT NULL,
    tpi               REAL NOT NULL,
    major_mm          REAL NOT NULL,
    effective_mm      REAL NOT NULL,
    -- Of the screw.
    minor_mm          REAL NOT NULL,
    -- Of the nut.
    minor_internal_mm REAL NOT NULL,
    thread_depth_mm   REAL NOT NULL,
    thread_angle_deg  REAL NOT NULL,
    tensile_area_mm2  REAL NOT NULL,
    -- The largest minor diameter of the nut in the standard; null where none is held.
    largest_hole_mm   REAL,
    note              TEXT,
    PRIMARY KEY (system, size)
) STRICT, WITHOUT ROWID;
INSERT INTO thread
SELECT value ->> 'system', value ->> 'size', value ->> 'designation', value ->> 'pitch_mm',
       value ->> 'tpi', value ->> 'major_mm', value ->> 'effective_mm', value ->> 'minor_mm',
       value ->> 'minor_internal_mm', value ->> 'thread_depth_mm', value ->> 'thread_angle_deg',
       value ->> 'tensile_area_mm2', value ->> 'largest_hole_mm', value ->> 'note'
FROM given, json_each(tables, '$.threads');

-- Where the figures of a thread were read.
CREATE TABLE thread_source (
    system TEXT    NOT NULL,
    size   TEXT    NOT NULL,
    number INTEGER NOT NULL,
    source TEXT    NOT NULL,
    PRIMARY KEY (system, size, number),
    FOREIGN KEY (system, size) REFERENCES thread (system, size)
) STRICT, WITHOUT ROWID;
INSERT INTO thread_source
SELECT thread.value ->> 'system', thread.value ->> 'size', source.key + 1, source.value
FROM given, json_each(tables, '$.threads') AS thread, json_each(thread.value, '$.sources') AS source;

CREATE TABLE drill (
    series      TEXT NOT NULL,
    size        TEXT NOT NULL,
    label       TEXT NOT NULL,
    diameter_mm REAL NOT NULL,
    diameter_in REAL NOT NULL,
    source      TEXT NOT NULL,
    PRIMARY KEY (series, size)
) STRICT, WITHOUT ROWID;
INSERT INTO drill
SELECT value ->> 'series', value ->> 'size', value ->> 'label', value ->> 'diameter_mm',
       value ->> 'diameter_in', value ->> 'source'
FROM given, json_each(tables, '$.drills');

-- Every drill that leaves between 50 % and 90 % of the full thread.
CREATE TABLE tapping_drill (
    system             TEXT NOT NULL,
    size               TEXT NOT NULL,
    drill_series       TEXT NOT NULL,
    drill_size         TEXT NOT NULL,
    engagement_percent REAL NOT NULL,
    -- 1 or 0; null where the standard's largest hole is not held.
    within_standard    INTEGER,
    PRIMARY KEY (system, size, drill_series, drill_size),
    FOREIGN KEY (system, size) REFERENCES thread (system, size),
    FOREIGN KEY (drill_series, drill_size) REFERENCES drill (series, size)
) STRICT, WITHOUT ROWID;
INSERT INTO tapping_drill
SELECT thread.value ->> 'system', thread.value ->> 'size', found.value ->> '$.drill.series',
       found.value ->> '$.drill.size', found.value ->> 'engagement_percent',
       found.value ->> 'within_standard'
FROM given, json_each(tables, '$.threads') AS thread, json_each(thread.value, '$.tapping') AS found;

-- The holes a screw passes. Taper threads have none.
CREATE TABLE clearance_hole (
    system       TEXT NOT NULL,
    size         TEXT NOT NULL,
    -- close, medium or free.
    fit          TEXT NOT NULL,
    hole_mm      REAL NOT NULL,
    -- The smallest drill not below it; null where no drill is large enough.
    drill_series TEXT,
    drill_size   TEXT,
    basis        TEXT NOT NULL,
    source       TEXT NOT NULL,
    PRIMARY KEY (system, size, fit),
    FOREIGN KEY (system, size) REFERENCES thread (system, size),
    FOREIGN KEY (drill_series, drill_size) REFERENCES drill (series, size)
) STRICT, WITHOUT ROWID;
INSERT INTO clearance_hole
SELECT thread.value ->> 'system', thread.value ->> 'size', hole.key, hole.value ->> 'hole_mm',
       hole.value ->> '$.drill.series', hole.value ->> '$.drill.size', hole.value ->> 'basis',
       hole.value ->> 'source'
FROM given, json_each(tables, '$.threads') AS thread,
     json_each(thread.value, '$.clearance') AS hole
WHERE hole.type = 'object';

CREATE TABLE material (
    slug          TEXT    NOT NULL PRIMARY KEY,
    name          TEXT    NOT NULL,
    -- The group it is in for the engagement aimed at.
    material_group TEXT   NOT NULL,
    -- 1 or 0: it pulls a drill in.
    grabs_drill   INTEGER NOT NULL,
    -- 1 or 0: it hardens under a rubbing drill.
    work_hardens  INTEGER NOT NULL,
    -- 1 or 0: a hole in it closes in after drilling.
    hole_closes_in INTEGER NOT NULL
) STRICT, WITHOUT ROWID;
INSERT INTO material
SELECT value ->> 'slug', value ->> 'name', value ->> 'group', value ->> 'grabs_drill',
       value ->> 'work_hardens', value ->> 'hole_closes_in'
FROM given, json_each(tables, '$.materials');

-- What else a material is called: its aliases in addresses, other names, marks in standards.
CREATE TABLE material_name (
    material TEXT NOT NULL REFERENCES material (slug),
    -- aliases, other_names or designations.
    kind     TEXT NOT NULL,
    name     TEXT NOT NULL,
    PRIMARY KEY (material, kind, name)
) STRICT, WITHOUT ROWID;
INSERT INTO material_name
SELECT material.value ->> 'slug', list.key, name.value
FROM given, json_each(tables, '$.materials') AS material, json_each(material.value) AS list,
     json_each(list.value) AS name
WHERE list.key IN ('aliases', 'other_names', 'designations');

-- The first of each list is the one the plan uses.
CREATE TABLE material_speed (
    material       TEXT    NOT NULL REFERENCES material (slug),
    -- drilling_speeds, with a high-speed steel drill, or tapping_speeds, under power.
    kind           TEXT    NOT NULL,
    number         INTEGER NOT NULL,
    low_m_per_min  REAL    NOT NULL,
    high_m_per_min REAL    NOT NULL,
    -- The metal in the source's own words.
    printed_as     TEXT    NOT NULL,
    source         TEXT    NOT NULL,
    PRIMARY KEY (material, kind, number)
) STRICT, WITHOUT ROWID;
INSERT INTO material_speed
SELECT material.value ->> 'slug', list.key, speed.key + 1, speed.value ->> 'low_m_per_min',
       speed.value ->> 'high_m_per_min', speed.value ->> 'printed_as', speed.value ->> 'source'
FROM given, json_each(tables, '$.materials') AS material, json_each(material.value) AS list,
     json_each(list.value) AS speed
WHERE list.key IN ('drilling_speeds', 'tapping_speeds');

-- Drilling feeds printed for one metal alone.
CREATE TABLE material_feed (
    material        TEXT    NOT NULL REFERENCES material (slug),
    number          INTEGER NOT NULL,
    -- The band of drills it is printed for; no end where the source says "and over".
    from_mm         REAL    NOT NULL,
    to_mm           REAL,
    low_mm_per_rev  REAL    NOT NULL,
    high_mm_per_rev REAL    NOT NULL,
    printed_as      TEXT    NOT NULL,
    source          TEXT    NOT NULL,
    PRIMARY KEY (material, number)
) STRICT, WITHOUT ROWID;
INSERT INTO material_feed
SELECT material.value ->> 'slug', feed.key + 1, feed.value ->> 'from_mm', feed.value ->> 'to_mm',
       feed.value ->> 'low_mm_per_rev', feed.value ->> 'high_mm_per_rev',
       feed.value ->> 'printed_as', feed.value ->> 'source'
FROM given, json_each(tables, '$.materials') AS material,
     json_each(material.value, '$.feeds') AS feed;

-- Advice in words, the dangers and cautions among it.
CREATE TABLE material_advice (
    material TEXT    NOT NULL REFERENCES material (slug),
    -- drilling_lubricant, tapping_lubricant, back_off, behaviour, broken_tap, cautions or dangers.
    kind     TEXT    NOT NULL,
    number   INTEGER NOT NULL,
    text     TEXT    NOT NULL,
    source   TEXT    NOT NULL,
    PRIMARY KEY (material, kind, number)
) STRICT, WITHOUT ROWID;
INSERT INTO material_advice
SELECT material.value ->> 'slug', list.key, 1, list.value ->> 'text', list.value ->> 'source'
FROM given, json_each(tables, '$.materials') AS material, json_each(material.value) AS list
WHERE list.key IN ('drilling_lubricant', 'tapping_lubricant', 'back_off')
UNION ALL
SELECT material.value ->> 'slug', list.key, advice.key + 1, advice.value ->> 'text',
       advice.value ->> 'source'
FROM given, json_each(tables, '$.materials') AS material, json_each(material.value) AS list,
     json_each(list.value) AS advice
WHERE list.key IN ('behaviour', 'broken_tap', 'cautions', 'dangers');

COMMIT;
