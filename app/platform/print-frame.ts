/** Prints what a frame shows, and nothing of the page around it. */
export function printFrame(frame: HTMLIFrameElement): void {
  frame.contentWindow?.focus();
  frame.contentWindow?.print();
}
