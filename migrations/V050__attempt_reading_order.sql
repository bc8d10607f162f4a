-- When a reading came in, and which earlier one it stands in place of.
alter table attempt_reading add column at_ms bigint;
alter table attempt_reading add column corrects varchar(80);
