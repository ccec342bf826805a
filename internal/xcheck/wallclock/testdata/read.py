"""Reads "zone moment" lines; prints both readings as seconds since 1970 and how often it is shown."""
import sys
from datetime import datetime, timezone
from zoneinfo import ZoneInfo

for line in sys.stdin:
    zone, moment = line.split()
    wall = datetime.fromisoformat(moment)
    first, second = (wall.replace(tzinfo=ZoneInfo(zone), fold=f).astimezone(timezone.utc) for f in (0, 1))
    if first == second:
        shown = "once"
    elif first.astimezone(ZoneInfo(zone)).replace(tzinfo=None) == wall:
        shown = "twice"
    else:
        shown = "skipped"
    print(int(first.timestamp()), int(second.timestamp()), shown)
