-- Which form a wording was last kept from: the same form may keep it again, while another, opened before,
-- must not overwrite it unread. Empty for what was kept before this.
ALTER TABLE note_version ADD COLUMN form_key TEXT NOT NULL DEFAULT '' CHECK (length(form_key) <= 64);
