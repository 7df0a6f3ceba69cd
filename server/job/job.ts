import { Type, type Static } from 'typebox';
import { Bending } from './bending.ts';
import { CameBack } from './came-back.ts';
import { Closing, type SettledClosing } from './closing.ts';
import { Finish } from './finish.ts';
import { Fixing } from './fixing.ts';
import { Frame } from './frame.ts';
import { Machine } from './machine.ts';
import { Purge } from './purge.ts';
import { ShortText } from './quantities.ts';
import { Quote } from './quote.ts';
import { LogEntry, Rates } from './rates.ts';
import { Site } from './site.ts';
import { Stock } from './stock.ts';
import { Tube } from './tube.ts';
import { Welding } from './welding.ts';

/** The version of the Job document that this program writes. Older ones are upgraded, newer ones refused. */
export const JOB_VERSION = 6;

/** How lengths are shown and read where a person types no unit. */
export const Units = Type.Object(
  {
    length: Type.Union([Type.Literal('mm'), Type.Literal('inch')], { title: 'unit of length' }),
    /** The finest fraction of an inch shown: 1/fraction. */
    fraction: Type.Union([Type.Literal(8), Type.Literal(16), Type.Literal(32), Type.Literal(64)], {
      title: 'finest fraction of an inch',
    }),
  },
  { title: 'units', additionalProperties: false },
);
export type Units = Static<typeof Units>;

/** Settings for printed sheets. */
export const Print = Type.Object(
  {
    paper: Type.Union([Type.Literal('a4'), Type.Literal('letter')], { title: 'paper' }),
    /** Stations round a wrap template's table of ordinates. */
    templateStations: Type.Union([Type.Literal(16), Type.Literal(24)], { title: 'template stations' }),
  },
  { title: 'print', additionalProperties: false },
);
export type Print = Static<typeof Print>;

/**
 * One piece of work for one customer, as plain data. Lengths are millimetres, angles degrees, times seconds,
 * money minor units. `asTyped` keeps the text of a field as its person typed it, by JSON pointer, so that
 * 1-1/2 in stays 1-1/2 in and a text that could not be read is still there after a reload.
 */
export const Job = Type.Object(
  {
    format: Type.Literal('hoopwright-job'),
    version: Type.Literal(JOB_VERSION),
    title: ShortText('title'),
    customer: ShortText('customer'),
    drawingNumber: ShortText('drawing number', 60),
    note: ShortText('note', 1000),
    /** True where the job is a made-up example. */
    invented: Type.Boolean({ title: 'invented example' }),
    units: Units,
    asTyped: Type.Record(Type.String({ maxLength: 200 }), Type.String({ maxLength: 200 }), {
      title: 'texts as typed',
      maxProperties: 1000,
    }),
    tube: Tube,
    machine: Machine,
    bending: Bending,
    frame: Frame,
    fixing: Fixing,
    cameBack: Type.Union([CameBack, Type.Null()], { title: 'frame as it came back' }),
    closing: Closing,
    purge: Purge,
    welding: Welding,
    finish: Finish,
    site: Site,
    stock: Stock,
    rates: Rates,
    quote: Quote,
    /** What the work on this job really took. */
    log: Type.Array(LogEntry, { maxItems: 200, title: 'times taken' }),
    print: Print,
  },
  { title: 'job', additionalProperties: false },
);
export type Job = Static<typeof Job>;

/** A job with the values known that the plan reckons itself where nothing is typed. */
export type SettledJob = Job & { readonly closing: SettledClosing };
