/** What a page can say of an error: what happened, what was kept, what to do. */

/** An answer of the server that is no good, or no answer at all. */
export class Trouble extends Error {
  /** The server's code, or `away` when it could not be reached at all. */
  readonly code: string;
  readonly status: number;
  readonly kept?: string;
  readonly todo?: string;

  constructor(told: { message: string; code: string; status?: number; kept?: string; todo?: string }) {
    super(told.message);
    this.name = 'Trouble';
    this.code = told.code;
    this.status = told.status ?? 0;
    this.kept = told.kept;
    this.todo = told.todo;
  }

  /** Any thrown thing as a Trouble. A failed fetch means that the server is away. */
  static of(error: unknown): Trouble {
    if (error instanceof Trouble) return error;
    if (error instanceof TypeError || (error instanceof DOMException && /Abort|Timeout/.test(error.name))) {
      return new Trouble({
        code: 'away',
        message: 'Snackstop did not answer: it is not running, or this device has no connection to it.',
        todo: 'Start it (npm start) or come back into reach, then try again. Notes waiting on this device are safe.',
      });
    }
    return new Trouble({
      code: 'broken',
      message: `Something went wrong on this page: ${error instanceof Error ? error.message : String(error)}`,
      todo: 'Reload the page. What was kept before stays kept.',
    });
  }
}
