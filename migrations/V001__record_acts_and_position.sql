-- The projection's own book-keeping: which acts are in it, and how far along the journal it is.
create table act (
  id varchar(64) primary key,
  sum varchar(64) not null,
  n bigint not null
);
create table position (
  only_row int primary key check (only_row = 1),
  n bigint not null,
  hash varchar(64) not null
);
