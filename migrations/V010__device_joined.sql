-- Devices that joined, with what they may do; only the hash of a token is ever kept.
create table device (
  id varchar(64) primary key,
  token_hash varchar(64) not null unique,
  person varchar(64) not null,
  role varchar(16) not null,
  joined_at_ms bigint not null,
  ended_at_ms bigint
);
