/**
 * Net current in wiring and pipes, A, a log-normal: practitioners write of 0.25 to 2.5 A on water pipes; the middle of that, with a
 * spread that has a tenth of them above 3 A. The project's choice.
 */
export const NET_CURRENT = { median: 0.8, sd: 1 };
