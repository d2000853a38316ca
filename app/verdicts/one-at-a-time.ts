/**
 * Does some work one turn at a time: asked for while a turn is on, it is done once more after it, so
 * that nothing asked for meanwhile is missed. Answers when no turn is left.
 */
export function oneAtATime(work: () => Promise<void>): () => Promise<void> {
  let isWanted = false;
  let running: Promise<void> | undefined;
  const run = async (): Promise<void> => {
    try {
      while (isWanted) {
        isWanted = false;
        await work();
      }
    } finally {
      running = undefined;
    }
  };
  return () => {
    isWanted = true;
    running ??= run();
    return running;
  };
}
