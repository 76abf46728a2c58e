/** How a ribbon lies, in the words of its forms. */
export const LAYS = [
  { value: 'fixed', label: 'Fixed pitch', means: 'flat; connectors must meet the headers exactly' },
  { value: 'bends', label: 'May bend', means: 'flat; arches between its connectors' },
  { value: 'loose', label: 'Hangs loose', means: 'a power lead, or a link to another row' },
] as const;
