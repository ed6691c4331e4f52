// How far a long run is, for someone who waits at a terminal: count, plan, time left. Elsewhere nothing.
/** Fewer steps than this are done before one could read. */
const FEWEST = 50;
const BETWEEN_MS = 200;

/** Where it is shown: standard error. */
export interface ProgressScreen {
  readonly write: (text: string) => void;
  readonly isTerminal: boolean;
  readonly columns: number;
}

export interface Progress {
  /** Says that a step of so many begins, by what it is about. */
  readonly at: (step: number, of: number, what: string) => void;
  /** Leaves the line as if nothing had been there. */
  readonly end: () => void;
}

/** Progress on a screen. `now` is a clock in milliseconds. */
export function progressOn(err: ProgressScreen, isWanted: boolean, now: () => number): Progress {
  if (!isWanted || !err.isTerminal) return { at: () => {}, end: () => {} };
  let began = now();
  let last = 0;
  let isShown = false;
  return {
    at: (step, of, what) => {
      const at = now();
      if (step === 0) began = at;
      if (of < FEWEST || at - last < BETWEEN_MS) return;
      last = at;
      isShown = true;
      const left =
        step === 0
          ? ''
          : `, about ${Math.ceil((((at - began) / step) * (of - step)) / 1000)} s left`;
      err.write(`\r${`${step} of ${of}: ${what}${left}`.slice(0, err.columns - 1)}\u001b[K`);
    },
    end: () => {
      if (isShown) err.write('\r\u001b[K');
    },
  };
}
