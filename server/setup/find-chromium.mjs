// The one place that knows where a browser for the tests may stand. Node built-ins only.
import { existsSync } from 'node:fs';

const USUAL_PLACES = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
];

/** Path of a Chromium: CHROMIUM_PATH where that is set, else the first usual place; undefined where there is none. */
export function findChromium() {
  const set = process.env.CHROMIUM_PATH;
  if (set !== undefined && set !== '') return existsSync(set) ? set : undefined;
  return USUAL_PLACES.find((place) => existsSync(place));
}
