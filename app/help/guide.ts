/** A step of the whole job. */
export interface Step {
  readonly title: string;
  readonly text: string;
  /** The action that it is done with, by its id. */
  readonly action?: string;
  /** Pages that tell more. */
  readonly see?: readonly string[];
}

export const GUIDE: readonly Step[] = [
  {
    title: 'Shape the case',
    text: 'Give each row its width in HP and its depth in mm, measured from the back of a panel to the first thing behind it. Enter the supply with its ratings, and each board where it is screwed down.',
    action: 'show-case',
    see: ['check/too-deep', 'check/over-board'],
  },
  {
    title: 'Fill the stock',
    text: 'Enter each kind of module: width, depth, currents, and where its headers sit, measured at the rear with a rule. Leave unknown what you do not know; the program asks for it where it matters.',
    action: 'show-stock',
    see: ['check/unknown-facts', 'check/guessed-data'],
  },
  {
    title: 'Place the modules',
    text: 'Drag each module from the tray to a row. Modules that a stiff ribbon joins must stand at its connector pitch.',
    see: ['check/overlap', 'check/off-pitch'],
  },
  {
    title: 'Join them at the rear',
    text: 'Turn the case round: left and right swap. Take a ribbon, point at the first header, and look where its other connectors land before you put it down.',
    action: 'turn',
    see: ['check/displaced', 'check/stripe-reversed'],
  },
  {
    title: 'Feed each group once',
    text: 'One lead feeds all that a ribbon joins by its supply pins. A second one would join two paths of the supply.',
    action: 'feed-all',
    see: ['check/unpowered', 'check/double-feed', 'check/joined-supplies'],
  },
  {
    title: 'Read the notes and the power',
    text: 'Mend what is damage or a fault. Judge each reminder, and put it away when you have. Look at the headroom of each voltage by itself: the negative one is often the smaller.',
    action: 'show-power',
    see: ['check/overload', 'check/low-headroom'],
  },
  {
    title: 'Buy and crimp',
    text: 'Print the parts and the cut list. Strips at true scale show where each connector is pressed on, and on which face. Measure the printed bar first: printers do not keep to scale by themselves.',
    action: 'bench-sheet',
  },
  {
    title: 'Test each ribbon before it goes in',
    text: 'Go through the continuity table with a meter, neighbours included, and tick each ribbon off. A ribbon that was made wrong is found here for nothing.',
    action: 'show-built',
  },
  {
    title: 'Plug in the printed order',
    text: 'Switch off, unplug, and wait. What lies under comes first. At each header look for stripe, pin 1, and pins left free at both ends.',
    action: 'bench-sheet',
    see: ['check/free-pins'],
  },
  {
    title: 'Power up',
    text: 'First the supply alone, then the boards, then one group at a time. Compare each reading with the sheet. Smell, heat or a missing voltage: switch off at once.',
    action: 'show-built',
  },
  {
    title: 'Keep it as built',
    text: 'Mark the take as in the case. From now on a change sheet tells the steps from it to any other take.',
    action: 'mark-in-case',
  },
];
