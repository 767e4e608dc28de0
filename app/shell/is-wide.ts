/** Whether what is behind stands beside what is live, as wide.css has it: then it is shown open. */
export const isWide = (): boolean => matchMedia('(min-width: 46em) and (min-height: 30.01em)').matches;
