/** What a compact form can be no further read, or written, for. */
export class Unusable extends Error {
  readonly kind: 'damaged' | 'too-big';

  constructor(kind: Unusable['kind']) {
    super(kind);
    this.kind = kind;
  }
}
