// Reads a calendar file with ical.js and prints what it saw as JSON.
import { readFileSync } from "node:fs";
import ICAL from "ical.js";

const calendar = new ICAL.Component(ICAL.parse(readFileSync(process.argv[2], "utf8")));
const text = (c, name) => c.getFirstPropertyValue(name) ?? "";
const instant = (t) => t.toJSDate().toISOString().replace(".000Z", "Z");

const events = calendar.getAllSubcomponents("vevent").map((c) => {
  const event = new ICAL.Event(c, { strictExceptions: true });
  return {
    UID: event.uid,
    Stamp: instant(c.getFirstPropertyValue("dtstamp")),
    Start: instant(event.startDate),
    End: instant(event.endDate),
    Summary: event.summary,
    Description: event.description ?? "",
    Location: event.location ?? "",
    Transparency: text(c, "transp"),
    Sequence: event.sequence,
    Alarms: c.getAllSubcomponents("valarm").map((a) => ({
      Seconds: a.getFirstPropertyValue("trigger").toSeconds(),
      AtEnd: a.getFirstProperty("trigger").getParameter("related") === "END",
      Text: text(a, "description"),
    })),
  };
});
console.log(JSON.stringify({ Name: text(calendar, "name"), OtherName: text(calendar, "x-wr-calname"), Events: events }));
