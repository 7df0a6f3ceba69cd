import { wallClockNow } from './level-age.ts';

/** How often the page looks at the clock [ms]: the hands of a wall clock move once a minute. */
const LOOKS = 60_000;

/** What the clock on the wall shows, looked at again every minute. */
export class LevelClock {
  now = $state(wallClockNow());

  /** Looks until the answer is called. */
  watch(): () => void {
    const look = (): void => {
      this.now = wallClockNow();
    };
    look();
    const timer = setInterval(look, LOOKS);
    return () => {
      clearInterval(timer);
    };
  }
}
