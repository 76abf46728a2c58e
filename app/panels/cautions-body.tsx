/** What to mind on the bench, in full. */
export const CautionsBody = () => (
  <>
    <h2>Before power</h2>
    <ul>
      <li>Switch off and unplug before wiring, and wait.</li>
      <li>Check stripe and seating at every header before power.</li>
      <li>The program checks the drawing, not the wiring, and knows only the data entered.</li>
      <li>Figures are estimates. Follow the makers’ instructions.</li>
      <li>
        It plans extra-low-voltage wiring only: mains wiring, inlets, fuses and protective earth are for a
        qualified person under the local electrical code.
      </li>
    </ul>
  </>
);
