import type { BrowserContext } from 'playwright-core';

/**
 * A refused value (422) and a save after somebody else's (409) are answers that the page is made for; the browser
 * writes a line of its own about each, which no page can keep it from.
 */
const EXPECTED = /^Failed to load resource: the server responded with a status of (409|422) /;

/** Tells everything that goes wrong in any tab of a visitor. */
export function faultsOf(context: BrowserContext, tell: (fault: string) => void): void {
  context.on('weberror', (error) => {
    tell(`error in the page: ${error.error().message}`);
  });
  context.on('console', (message) => {
    if (message.type() === 'error' && !EXPECTED.test(message.text()))
      tell(`console: ${message.text()} (${message.location().url})`);
  });
  context.on('response', (response) => {
    if (response.status() >= 500) tell(`${String(response.status())} from ${response.url()}`);
  });
}
