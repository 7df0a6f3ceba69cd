import { STAGES, type StageKey } from './stages.ts';

/** Which stage is being read: the one that crosses a line a little above the middle of the screen. */
export class ReadingPlace {
  stage: StageKey = $state('what');

  /** Looks until the answer is called; the stages must be on the page. */
  watch(): () => void {
    const observer = new IntersectionObserver(
      (entries) => {
        for (const { isIntersecting, target } of entries) {
          const stage = STAGES.find((key) => target.id === `stage-${key}`);
          if (isIntersecting && stage !== undefined) this.stage = stage;
        }
      },
      { rootMargin: '-45% 0px -54% 0px' },
    );
    for (const stage of STAGES) {
      const section = document.getElementById(`stage-${stage}`);
      if (section !== null) observer.observe(section);
    }
    return () => {
      observer.disconnect();
    };
  }
}
