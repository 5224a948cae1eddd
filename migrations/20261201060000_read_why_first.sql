-- Why something worked or did not is a remark, which somebody reads before it is shown. A verdict, which is shown
-- unread, holds it no more.
ALTER TABLE verdict DROP COLUMN why;
