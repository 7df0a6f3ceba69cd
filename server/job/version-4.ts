import { isPlainObject, type Document } from './check-value.ts';
import { newJob } from './default-job.ts';

/**
 * Version 3 had one set of torch settings for all welds, one switch for vent holes, and no plates, finish or position
 * on the bench. What was typed then holds for every kind of weld; the rest starts as a new job does.
 */
export function withWelds(document: Document): Document {
  return {
    ...document,
    fixing: Array.isArray(document['fixing']) ? document['fixing'].map(withPlate) : document['fixing'],
    purge: purgeOf(document['purge']),
    welding: weldingOf(document['welding']),
    finish: newJob('straight').finish,
    asTyped: movedTexts(document['asTyped'], document['welding']),
  };
}

const withPlate = (point: unknown): unknown =>
  isPlainObject(point) && point['fixing'] !== 'post' ? { ...point, plate: null } : point;

/** What the switch for vent holes is called now; anything else is handed on, so that the check of the whole refuses it. */
const HOLES: Readonly<Record<string, string>> = { none: 'none', 'coped-ends': 'all' };

function purgeOf(purge: unknown): unknown {
  if (!isPlainObject(purge)) return purge;
  const { up, holes, meter, room, bottle } = newJob('straight').purge;
  const { ventHoles, ...kept } = purge;
  const { lowVolume, fanWay, receives } = room;
  const { reserve, gaugeNow } = bottle;
  const under = typeof ventHoles === 'string' ? (HOLES[ventHoles] ?? ventHoles) : ventHoles;
  return {
    ...kept,
    up,
    holes: { ...holes, underSaddles: under },
    meter,
    room: isPlainObject(kept['room']) ? { lowVolume, fanWay, receives, ...kept['room'] } : kept['room'],
    bottle: isPlainObject(kept['bottle']) ? { reserve, gaugeNow, ...kept['bottle'] } : kept['bottle'],
  };
}

/** Least that a setting takes now; version 3 took anything over nothing, and no thickness for a weld without filler. */
const LEAST: Readonly<Record<string, number>> = { travelSpeed: 0.05, torchFlow: 0.1, fillerDiameter: 0.3 };

/** What version 3 took and what is no size any more is the plan's own from now on; damage stays, to be refused. */
const isNoSize = (setting: string, value: unknown): boolean =>
  typeof value === 'number' &&
  value < (LEAST[setting] ?? 0) &&
  (value > 0 || (value === 0 && setting === 'fillerDiameter'));

/** The one set of settings for all three kinds of weld. */
function weldingOf(welding: unknown): unknown {
  if (!isPlainObject(welding)) return welding;
  const fresh = newJob('straight').welding;
  const { travelSpeed, torchFlow, postFlow, fillerDiameter, ...kept } = welding;
  const typed = Object.entries({ travelSpeed, torchFlow, postFlow, fillerDiameter });
  const settings: Document = {
    ...Object.fromEntries(typed.map(([name, value]) => [name, isNoSize(name, value) ? null : value])),
    ...(fillerDiameter === 0 ? { process: '142' } : {}),
  };
  return {
    ...kept,
    ...fresh,
    butt: { ...fresh.butt, ...settings },
    saddle: { ...fresh.saddle, ...settings },
    pad: { ...fresh.pad, ...settings },
  };
}

/** Texts of the torch's old fields stand at the butt now; that of a value that was let go went with it. */
function movedTexts(texts: unknown, welding: unknown): unknown {
  if (!isPlainObject(texts)) return texts;
  const old = isPlainObject(welding) ? welding : {};
  return Object.fromEntries(
    Object.entries(texts).flatMap(([field, text]) => {
      const setting = /^\/welding\/(travelSpeed|torchFlow|postFlow|fillerDiameter)$/.exec(field)?.[1];
      if (setting === undefined) return [[field, text]];
      return isNoSize(setting, old[setting]) ? [] : [[`/welding/butt/${setting}`, text]];
    }),
  );
}
