"""The upgrade museum: what each released build left on a phone and in its office, to be sent by every later one."""
