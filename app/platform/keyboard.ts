/** Whether keys are printed the Apple way. */
export const isApple = (): boolean => /Mac|iPhone|iPad/.test(navigator.platform);
