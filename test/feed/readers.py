"""Reads each calendar named on the command line with the reader named first; prints a line of JSON for each."""

import json
import os
import sys


def with_icalendar(path):
    import icalendar

    with open(path, "rb") as file:
        calendar = icalendar.Calendar.from_ical(file.read())
    events = calendar.walk("VEVENT")
    faults = [str(error) for event in events for error in event.errors]
    for event in events:
        if not event["DTEND"].dt > event["DTSTART"].dt:
            faults.append("ends at its start: " + event["UID"])
    # Written anew it has to say the same.
    again = icalendar.Calendar.from_ical(calendar.to_ical())
    if [event["UID"] for event in again.walk("VEVENT")] != [event["UID"] for event in events]:
        faults.append("written anew it has other events")
    return {"uids": [str(event["UID"]) for event in events], "faults": faults}


def with_vobject(path):
    import vobject

    with open(path, encoding="utf-8", newline="") as file:
        calendars = list(vobject.readComponents(file.read()))
    faults = [] if len(calendars) == 1 else ["%d calendars" % len(calendars)]
    calendars[0].validate(raiseException=True)
    return {"uids": [event.uid.value for event in calendars[0].vevent_list], "faults": faults}


def with_khal(path):
    from click.testing import CliRunner
    from khal.cli import main_khal

    asked = ["-c", os.environ["KHAL_CONFIG"], "printics", "--format", "@@{uid}##", path]
    result = CliRunner().invoke(main_khal, asked, catch_exceptions=False)
    faults = [] if result.exit_code == 0 else ["exit %d: %s" % (result.exit_code, result.output[-300:])]
    return {"uids": [part.split("##")[0] for part in result.output.split("@@")[1:]], "faults": faults}


READERS = {"icalendar": with_icalendar, "vobject": with_vobject, "khal": with_khal}

for name in sys.argv[2:]:
    try:
        found = READERS[sys.argv[1]](name)
    except Exception as error:  # Whatever a reader throws is a feed that it does not take.
        found = {"uids": [], "faults": ["%s: %s" % (type(error).__name__, error)]}
    print(json.dumps(found))
