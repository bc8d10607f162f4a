-- The metronome that a practice wind was begun with.
create table winding_paced (
  wind_id varchar(80) primary key,
  crank_turns_per_minute int not null
);
