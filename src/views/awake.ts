/** Keeps the screen on while somebody walks with a meter. Returns what lets it sleep again. */
export function awake(): () => void {
  let lock: WakeLockSentinel | null = null;
  let ended = false;

  // The browser drops the lock whenever the page is hidden; it is asked for again on return.
  const ask = async () => {
    if (document.visibilityState !== 'visible' || !('wakeLock' in navigator)) return;
    try {
      lock = await navigator.wakeLock.request('screen');
      if (ended) await lock.release();
    } catch {
      // Refused on a low battery: the screen then sleeps as it always does.
      lock = null;
    }
  };
  document.addEventListener('visibilitychange', ask);
  void ask();
  return () => {
    ended = true;
    document.removeEventListener('visibilitychange', ask);
    void lock?.release();
  };
}
