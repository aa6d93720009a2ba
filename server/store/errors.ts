/** What can go wrong with the store, each with a sentence for a person. */

/** Another running process holds the folder. */
export class FolderInUseError extends Error {
  override readonly name = 'FolderInUseError';
  constructor(
    message: string,
    /** Of the process that holds it, where known. */
    readonly holder: { pid: number; port?: number; host: string },
  ) {
    super(message);
  }
}

/** The folder can't be opened without risking what lies in it. Everything was left in place. */
export class FolderUnusableError extends Error {
  override readonly name = 'FolderUnusableError';
}

/** A change did not reach the disk. Memory shows what is on the disk; sending the change again later is safe. */
export class NotKeptError extends Error {
  override readonly name = 'NotKeptError';
  /** The system's code (ENOSPC, EROFS …), where it gave one. */
  readonly code?: string;
  constructor(message: string, cause?: unknown) {
    super(message, { cause });
    this.code = codeOf(cause);
  }
}

/** A change would have broken a rule of the store (a shape, a note's words, an id used twice). Nothing was changed. */
export class ChangeRefusedError extends Error {
  override readonly name = 'ChangeRefusedError';
}

/** The errno name of a system error, where it has one. */
export function codeOf(error: unknown): string | undefined {
  const code = (error as { code?: unknown } | undefined)?.code;
  return typeof code === 'string' ? code : undefined;
}

/** Errno names of POSIX.1-2017 (errno.h) that a person can do something about. */
const REASONS: Record<string, string> = {
  ENOSPC: 'the disk is full',
  EDQUOT: 'the disk space allowed to this account is used up',
  EROFS: 'the disk is read-only',
  EACCES: 'this account may not write there',
  EPERM: 'the system does not allow writing there',
  EIO: 'the disk reported a fault',
  ENOENT: 'the folder is gone',
  ENOTDIR: 'that is a file, not a folder',
  EMFILE: 'too many files are open',
  ENFILE: 'too many files are open on this machine',
  EFBIG: 'the file would be larger than the system allows',
};

/** Why the system refused, in words: "the disk is full (ENOSPC)". */
export function reasonOf(error: unknown): string {
  const code = codeOf(error);
  if (code) return `${REASONS[code] ?? 'the system refused'} (${code})`;
  return error instanceof Error ? error.message : String(error);
}
