-- A flow test may go with the head at no flow: the valve shut for a moment, the gauge read.
alter table flow_test
    add column shut_off_kpa           double precision,
    add column shut_off_u_kpa         double precision check (shut_off_u_kpa >= 0),
    add column shut_off_above_water_m double precision,
    add check ((shut_off_kpa is null) = (shut_off_u_kpa is null)
               and (shut_off_kpa is null) = (shut_off_above_water_m is null));
