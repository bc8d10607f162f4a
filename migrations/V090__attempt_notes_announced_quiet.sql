-- What is noted of a wind and its flight, what officials elsewhere announced, and when it was quiet.
create table attempt_note (
  attempt_id varchar(80) primary key,
  spare_motor_id varchar(80),
  peak_torque_nmm double precision,
  peak_torque_typed varchar(40),
  back_off_crank_turns double precision,
  remaining_crank_turns double precision,
  contacts varchar(400),
  note varchar(400),
  announced_ms bigint,
  announced_at_ms bigint,
  from_paper boolean not null
);
create table attempt_quiet (
  attempt_id varchar(80) primary key,
  from_ms bigint not null,
  to_ms bigint
);
