/** How an entry says its assertion and its doubt: only where there is something to say. */

/** Leaves `present` unsaid. */
export const said = (assertion: string) => (assertion === 'present' ? {} : { assertion: assertion as 'absent' });
/** A reason makes a doubt. */
export const doubted = (reason: string | undefined, much = false) =>
  reason ? { doubt: much ? ('much' as const) : ('some' as const), because: reason } : {};
