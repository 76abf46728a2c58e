/** A step of the whole job. */
export interface Step {
  readonly title: string;
  readonly text: string;
  /** The action that it is done with, by its id. */
  readonly action?: string;
  /** Pages that tell more. */
  readonly see?: readonly string[];
  /** Taken from the program by a script (npm run picture); the file's name without its shade. */
  readonly picture?: { readonly name: string; readonly seen: string };
}

export const GUIDE: readonly Step[] = [
  {
    title: 'Shape the case',
    picture: {
      name: 'case',
      seen: 'The case opened in the margin: width, height, depth and gap of the upper and lower row are fields to type in.',
    },
    text: 'Give each row its width in HP and its depth in mm, measured from the back of a panel to the first thing behind it. Enter the supply with its ratings, and each board where it is screwed down.',
    action: 'show-case',
    see: ['check/too-deep', 'check/over-board'],
  },
  {
    title: 'Fill the stock',
    picture: {
      name: 'stock',
      seen: 'The stock: kinds of module with their width, headers, and how many are owned.',
    },
    text: 'Enter each kind of module: width, depth, currents, and where its headers sit, measured at the rear with a rule; and each kind of ribbon: its connectors, its length, its AWG. Leave unknown what you do not know; the program asks for it where it matters.',
    action: 'show-stock',
    see: ['check/unknown-facts', 'check/guessed-data'],
  },
  {
    title: 'Place the modules',
    picture: {
      name: 'place',
      seen: 'The front of the case: a Cobble from the tray is held over the free left end of the lower row.',
    },
    text: 'Drag each module from the tray to a row. Modules that a stiff ribbon joins must stand at its connector pitch.',
    see: ['check/overlap', 'check/off-pitch'],
  },
  {
    title: 'Join them at the rear',
    picture: {
      name: 'join',
      seen: 'The rear: a ribbon of five connectors is drawn from Jetty A to Boulder 1; a card beside the pointer tells how many of its connectors land.',
    },
    text: 'Turn the case round: left and right swap. Take a ribbon, point at the first header, and look where its other connectors land before you put it down.',
    action: 'turn',
    see: ['check/displaced', 'check/stripe-reversed'],
  },
  {
    title: 'Feed each group once',
    picture: {
      name: 'feed',
      seen: 'A note says that five linked modules have no power lead, and offers the lead that would feed them.',
    },
    text: 'One lead feeds all that a ribbon joins by its supply pins. A second one would join two paths of the supply.',
    action: 'feed-all',
    see: ['check/unpowered', 'check/double-feed', 'check/joined-supplies'],
  },
  {
    title: 'Read the notes and the power',
    picture: {
      name: 'power',
      seen: 'The power panel: what is drawn of each voltage, beside its rating and what is to be kept free.',
    },
    text: 'Mend what is damage or a fault. Judge each reminder: what is judged can be put away. Look at the headroom of each voltage by itself: the negative one is often the smaller.',
    action: 'show-power',
    see: ['check/overload', 'check/low-headroom'],
  },
  {
    title: 'Buy and crimp',
    picture: {
      name: 'crimp',
      seen: 'A page of the bench sheet: strips at true scale, with a bar to measure first.',
    },
    text: 'Print the parts and the cut list. Strips at true scale show where each connector is pressed on, and on which face. Measure the printed bar first: printers do not keep to scale by themselves.',
    action: 'bench-sheet',
  },
  {
    title: 'Test each ribbon before it goes in',
    picture: {
      name: 'test',
      seen: 'As built: ribbon S1 is ticked for stripe, continuity and no short.',
    },
    text: 'Go through the continuity table with a meter, neighbours included, and tick each ribbon off. A ribbon that was made wrong is found here for nothing. Ribbons that are joined plug in socket are one harness, tested as one.',
    action: 'show-built',
  },
  {
    title: 'Plug in the printed order',
    picture: {
      name: 'order',
      seen: 'A page of the bench sheet: the steps in their order, beginning with tests.',
    },
    text: 'Switch off, unplug, and wait. What lies under comes first. At each header look for stripe, pin 1, and pins left free at both ends.',
    action: 'bench-sheet',
    see: ['check/free-pins'],
  },
  {
    title: 'Power up',
    picture: {
      name: 'power-up',
      seen: 'As built: unplugged, supply alone, boards; beside each voltage what is expected and a field for what is measured.',
    },
    text: 'First the supply alone, then the boards, then one group at a time. Compare each reading with the sheet. Smell, heat or a missing voltage: switch off at once.',
    action: 'show-built',
  },
  {
    title: 'Keep it as built',
    picture: {
      name: 'change',
      seen: 'The change sheet from the take in the case to another: power off first, then what to unplug.',
    },
    text: 'Mark the take as in the case. From now on a change sheet tells the steps from it to any other take.',
    action: 'mark-in-case',
  },
];
