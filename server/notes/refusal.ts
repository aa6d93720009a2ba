/** Something a person asked for that can't be done, with the sentence that tells them why. */
export class Refusal extends Error {
  override readonly name = 'Refusal';
  /** `bad-input` the request is at fault, `not-found` nothing has this id, `conflict` it does not go with what is kept. */
  readonly code: 'bad-input' | 'not-found' | 'conflict';
  /** What was kept all the same, as a sentence. */
  readonly kept: string | undefined;

  constructor(code: Refusal['code'], message: string, kept?: string) {
    super(message);
    this.code = code;
    this.kept = kept;
  }
}
