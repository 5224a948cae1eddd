-- The members, what they may do, their sessions, the slips that let them in, and the record of every act.

CREATE TABLE member (
    -- Never reused: an act in the record must not come to mean somebody else.
    id               INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    name             TEXT    NOT NULL CHECK (trim(name) <> '' AND length(name) <= 60),
    -- The name as names are compared: small letters, marks and spaces folded, so that no two look alike.
    name_key         TEXT    NOT NULL UNIQUE CHECK (name_key <> ''),
    -- argon2id, in the PHC form.
    password_hash    TEXT    NOT NULL CHECK (password_hash LIKE '$argon2id$%'),
    is_moderator     INTEGER NOT NULL DEFAULT 0 CHECK (is_moderator IN (0, 1)),
    is_inspector     INTEGER NOT NULL DEFAULT 0 CHECK (is_inspector IN (0, 1)),
    is_secretary     INTEGER NOT NULL DEFAULT 0 CHECK (is_secretary IN (0, 1)),
    -- The shared secret of the second factor; null until one is set up and tried.
    totp_secret      BLOB    CHECK (length(totp_secret) >= 16),
    -- The last step whose code was taken: a code counts once.
    totp_step        INTEGER CHECK (totp_step >= 0),
    joined_at        INTEGER NOT NULL CHECK (joined_at > 0),
    -- Set where the secretary has stopped the member signing in; null else.
    stopped_at       INTEGER CHECK (stopped_at > 0),
    -- Wrong passwords since the last right one, and when the last was tried.
    failures         INTEGER NOT NULL DEFAULT 0 CHECK (failures >= 0),
    failed_at        INTEGER CHECK (failed_at > 0)
) STRICT;

-- A one-time link or a printed slip with it: to join, or to choose a new password.
CREATE TABLE slip (
    -- SHA-256 of the token; the token itself is on the slip alone.
    token_hash       BLOB    NOT NULL PRIMARY KEY CHECK (length(token_hash) = 32),
    purpose          TEXT    NOT NULL CHECK (purpose IN ('join', 'reset')),
    -- Whose password is reset; null for a slip to join.
    member_id        INTEGER REFERENCES member (id) ON DELETE CASCADE,
    -- What a new member may do.
    is_moderator     INTEGER NOT NULL DEFAULT 0 CHECK (is_moderator IN (0, 1)),
    is_inspector     INTEGER NOT NULL DEFAULT 0 CHECK (is_inspector IN (0, 1)),
    is_secretary     INTEGER NOT NULL DEFAULT 0 CHECK (is_secretary IN (0, 1)),
    -- Who it is for, in the secretary's words.
    meant_for        TEXT    NOT NULL DEFAULT '' CHECK (length(meant_for) <= 60),
    -- Null where the program itself made it, at first start or from the command line.
    made_by          INTEGER REFERENCES member (id) ON DELETE SET NULL,
    made_at          INTEGER NOT NULL CHECK (made_at > 0),
    ends_at          INTEGER NOT NULL CHECK (ends_at > made_at),
    used_at          INTEGER CHECK (used_at > 0),
    CHECK ((purpose = 'reset') = (member_id IS NOT NULL))
) STRICT, WITHOUT ROWID;

CREATE TABLE session (
    -- SHA-256 of the cookie's value.
    token_hash       BLOB    NOT NULL PRIMARY KEY CHECK (length(token_hash) = 32),
    -- A number to name the session by on its member's page.
    number           INTEGER NOT NULL UNIQUE CHECK (number > 0),
    member_id        INTEGER NOT NULL REFERENCES member (id) ON DELETE CASCADE,
    made_at          INTEGER NOT NULL CHECK (made_at > 0),
    seen_at          INTEGER NOT NULL CHECK (seen_at >= made_at),
    -- When the member last gave the password, and the code where one is due; null while the code is due.
    proved_at        INTEGER CHECK (proved_at > 0),
    -- The browser in its own words, cut short.
    agent            TEXT    NOT NULL DEFAULT '' CHECK (length(agent) <= 200)
) STRICT, WITHOUT ROWID;
CREATE INDEX session_by_member ON session (member_id);

-- Every act on people and notes. The name stands as it was, for members who leave.
CREATE TABLE act (
    id               INTEGER NOT NULL PRIMARY KEY,
    at               INTEGER NOT NULL CHECK (at > 0),
    -- Null where nobody was signed in, or the program itself did it.
    member_id        INTEGER REFERENCES member (id) ON DELETE SET NULL,
    member_name      TEXT    NOT NULL DEFAULT '',
    -- What was done: 'sign-in', 'sign-in-refused', 'note-shown', 'role-given'; the list is the program's.
    what             TEXT    NOT NULL CHECK (what <> '' AND what NOT GLOB '*[^a-z-]*'),
    -- What it was done to: 'note/12', 'member/3'; may be empty.
    subject          TEXT    NOT NULL DEFAULT '' CHECK (length(subject) <= 100),
    detail           TEXT    NOT NULL DEFAULT '' CHECK (length(detail) <= 2000)
) STRICT;
CREATE INDEX act_by_time ON act (at);
CREATE INDEX act_by_subject ON act (subject, id);
