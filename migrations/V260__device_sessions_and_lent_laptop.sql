-- A token is a new one after each joining and change; the one before serves until the new one has come, since an answer
-- may be lost. joining_hash: of the number that the device made for its first joining, so that a repeat is no second device.
alter table device add column joining_hash varchar(64);
alter table device add column earlier_hash varchar(64);
alter table device add column earlier_role varchar(16);
alter table device add column changed_at_ms bigint;

-- Whether the students hold the laptop: then it may do what a captain may. One row, none before it was ever lent.
create table device_laptop (
  id integer primary key,
  lent boolean not null,
  at_ms bigint not null
);
