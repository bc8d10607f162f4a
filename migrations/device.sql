-- Devices that joined, with what they may do; only the hash of a token is ever kept.
create table device (
  id varchar(64) primary key,
  token_hash varchar(64) not null unique,
  person varchar(64) not null,
  role varchar(16) not null,
  joined_at_ms bigint not null,
  ended_at_ms bigint,
  -- Of the number that the device made for its first joining, so that a repeat is no second device.
  joining_hash varchar(64),
  -- A token is a new one after each change; the one before serves until the new one has come, since an answer may be lost.
  earlier_hash varchar(64),
  earlier_role varchar(16),
  changed_at_ms bigint,
  -- What it asks to be, until the coach answers, and what the coach has said yes to, until it comes for it.
  asked_role varchar(16),
  allowed_role varchar(16),
  -- Of an ended one: of the link by which devices joined then. It joins again only by another.
  ended_link_hash varchar(64)
);
-- Each request with an unknown token asks for these: strangers must not make the whole table be read.
create index device_earlier on device (earlier_hash);
create index device_joining on device (joining_hash);
-- Whether the students hold the laptop: then it may do what a captain may. One row, none before it was ever lent.
create table device_laptop (
  id integer primary key,
  lent boolean not null,
  at_ms bigint not null
);
