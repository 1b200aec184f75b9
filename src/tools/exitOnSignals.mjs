/**
 * Lets a signal end this process by way of its `exit` event, where what it started is ended too. Without this Ctrl+C
 * ends a process at once.
 */
export function exitOnSignals() {
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP']) process.once(signal, () => process.exit(130));
}
