-- The event that people work on, once somebody has said so. One row, none before.
create table contest_at_hand (
  id integer primary key,
  event_id varchar(80) not null
);
