/** Holds until somebody ends the process kindly: Ctrl-C, or the system that started it. A second time ends it at once. */
export const untilEnded = (): Promise<void> =>
  new Promise((ended) => {
    const signals = ['SIGINT', 'SIGTERM'] as const;
    const heard = () => {
      for (const signal of signals) process.off(signal, heard);
      ended();
    };
    for (const signal of signals) process.on(signal, heard);
  });
