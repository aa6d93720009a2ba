/**
 * Imported before anything that makes a schema: the page's content security policy allows no code made out of text, so
 * Zod must not try whether it could compile its checks (it would be reported as a violation each time).
 */
import { config } from 'zod';

config({ jitless: true });
