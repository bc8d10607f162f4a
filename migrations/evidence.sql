-- Where a value of a flight came from, and whether somebody confirmed it: the last word about each.
create table evidence_mark (
  flight_id varchar(80) not null,
  measured varchar(20) not null,
  number double precision,
  source varchar(10) not null,
  confirmed boolean not null,
  confirmed_by varchar(80),
  at_ms bigint,
  asked boolean,
  primary key (flight_id, measured)
);
