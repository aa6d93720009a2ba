/** The store: what is kept of a kennel, one JSON file for the kennel and one a season, in one folder. */
export { ChangeRefusedError, FolderInUseError, FolderUnusableError, NotKeptError } from './errors.ts';
export { openStore, type Parts, type Store } from './folder-store.ts';
