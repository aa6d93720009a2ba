/** Phrases that look like a scope's cue and are none, and the words at which scopes end. Notation as in `scopes.ts`. */

/**
 * Phrases in which a denial falls on their own words alone: in "a cut, not deep" only "deep" is denied, in "no change
 * in the swelling" only the change. The longest phrase at a place is taken, so that these cover the cue in them.
 */
export const INNER_DENIALS = `
  no {significant|definite|interval|significant interval|suspicious|real|big|} {change|changes|increase|decrease|improvement|difference} {in|to|on|with|from|}
  {not|n't} {extend|cause|drain} ; without difficulty
  {not|n't} {<so>} {deep|bad|serious|much|far|long|badly|terrible|awful|severe|nice}
  nothing {<so>} {deep|serious|bad|major|dramatic|terrible|awful|much}`;

/** Phrases that deny, plan or date nothing that is found. */
export const NOT_CUES = `
  no {better|worse|let up|letup|surprise|wonder|kidding|good|joke|fun|idea|matter|less|way to tell} ; no doubt {that|}
  no {,|!|.|?} ; no …3 {sorry|i mean} ; {did|do|could|can|ca|have|has|'ve|had|i 've|} {not|n't|never} {see|saw|seen|notice|noticed|find|found|feel|felt|spot|realize|realise|catch} …9 {until|till} ; no {<upto99>} ; no {longer|more} than ; no {question|mistake|denying|mistaking} {that|about it|}
  nothing but ; {not|never} without ; not to mention ; whether or not ; or not ; could {be|have been} {better|worse}
  {not|n't} {improving|improved|getting better|getting any better|healing|any better|any worse|better|worse|much better}
  no {problem|trouble|fuss|rush|hurry|stops|breaks} {eating|drinking|at all|}
  {not|n't} {only|just|merely|simply|even} ; not {necessarily|unlike|surprisingly|surprised|himself|herself|right}
  {not|n't} {as|so} {bad|raw|sore|stiff|swollen|lame|warm|hot|puffy|red|pink|much|tight|tender|gimpy|ouchy|inflamed|painful|angry|noticeable}
  {not|n't} {nearly|quite|half|near|anywhere near|anything like} {as|so} {bad|raw|sore|stiff|swollen|lame|warm|hot|puffy|red|pink|much|tight|tender|gimpy|ouchy|inflamed|painful|angry|noticeable}
  {would|did|could|do} n't you {know|believe} it ; i kid you not ; none the worse ; not a chance ; no chance
  {on|like|of|for} a <day> {<daypart>|} ;   {let 's|lets|let me} {see|think} ; used to {be|stand|sit|live} ; where {the|a|that|there} …3 used to
  {for|by|until|till|come} <day> {<daypart>|} ; {warning|advisory|watch} for <day>
  if nothing {happened|was wrong|were wrong|had happened}
  as {if|though} nothing {happened|was wrong|were wrong|had happened} ; as if ; as though
  never {mind|fails|stops|stopped|quits|quit|ends|lets up}
  {wo|would|will|does|did|do} n't {stop|quit|leave|settle|budge|let up|put weight|bear weight|put any weight}
  {will|would|can|could|did|does|do} not {stop|settle|budge|let up|put weight|bear weight|put any weight|cool|cool down|cool off}
  {wo|would|ca|could|did|does|do|is|was} n't {cool|cool down|cool off|cooling down|cooling off}
  {not|never} {stopped|stopping|settling|putting weight|bearing weight|putting any weight}
  {did|does|do} n't {take|like|want|mind|need|matter|help|care for}
  without {a|any|} {fuss|trouble|problem|bother|complaint|help|difficulty} ; with and without ; gram negative
    no {known|clear|specific|obvious|particular|} {cause|reason|explanation|diagnosis} for ; {not|n't} know {why|the cause of|what}
  might as well ; i 'd {put|give} {it|him|her|} ; the will
  if {anything|you can|you could|that makes sense|you ask me|you like|you get this|only}
  if {i|you|we} {press|pressed|push|pushed|touch|touched|squeeze|squeezed|bend|flex}
  since {the|our|his|her|} last {run|trip|time|race} ; since <month> ; {just|} in case $
  {'s|is|are|was|got|getting|not|n't} used to ; {<it>|} {<been>} gone down
  {<it>|} {<been>} {almost|nearly|mostly|about|pretty much|just about} {gone|healed|cleared up|cleared|over|worked out|out}
  {he|she|they} {has|have} {not|n't} gone {yet|potty|to the bathroom} ; hair {<been>} {all|} gone ; gone {before|by|in a second|in a minute|in a flash|in no time}
  {<it>|} {<been>} gone {flat|slack|lame|off|soft|to|ahead|out|back|through|for|in|on|over|up|home|into|bad|quiet|stiff|sour|from|missing}
  {come|came} out of {it|that} with
  since {last|the other|late|early|about|around|} {<day>|<shortday>|yesterday|night|nite|week|month|season|winter|run|day} {<daypart>|}
  since <few> <ago> ago ; until {<day>|yesterday|tomorrow}
  on the <nth> {mile|day|run|leg|lap|km|kilometer|kilometre|hill|dog|stop|break|time|try} ;
  now that {we|we 're|we 've|were|i 'm|i am|i 've|they|they 're} {stopped|quit|are stopped} ;
  {than|as|like|from} {it was|he was|she was|they were|} {on|last|} {<day>|yesterday|week|night|time|month|year} {<daypart>|}
  last {one|of|bit|mile|few|leg|stretch|climb|hill|stop}`;

/**
 * What ends a scope. `contrast`: every one. `denial`: that of a denial alone. `now`: that of a denial and of words for
 * earlier and later days. `after`: it ends behind these words, not before them.
 */
export interface EndGroup {
  name: string;
  ends: 'contrast' | 'denial' | 'now';
  after?: true;
  phrases: string;
}
export const ENDS: readonly EndGroup[] = [
  {
    name: 'contrast',
    ends: 'contrast',
    phrases: `
      but ; however ; though ; although ; tho ; whereas ; yet ; except ; exc ; besides ; because ; cause ; cuz ; nevertheless
      otherwise ; so ; on account of ; apart from ; aside from ; other than ; even though ; only that ; which is ; due to ; secondary to
      no wait ; no {no|} hang on ; no hold on ; no sorry ; no actually ; no make that ; no scratch that ; wait no
      scratch that ; i mean ; make that ; correction`,
  },
  {
    name: 'affirmed',
    ends: 'denial',
    phrases:
      'just ; only ; still ; mostly ; merely ; which ; great ; good ; happy ; strong ; fine ; ok ; clear ; clean ; sunny ; solid ; steady ; until ; after ; before',
  },
  {
    name: 'told in numbers',
    ends: 'denial',
    phrases: 'minus ; mile ; km ; kilometre ; kilometer ; a bit ; a little ; a touch',
  },
  {
    name: 'at all',
    ends: 'denial',
    after: true,
    phrases: 'at all ; to speak of ; whatsoever ; so far ; anywhere ; either $',
  },
  {
    name: 'now',
    ends: 'now',
    phrases: 'now ; right now ; today ; this morning ; this morn ; this week ; at the moment ; currently ; just now',
  },
];

/** Words by the part they play where a statement begins. A word may stand in several classes. */
export const CLASSES = {
  /** Subjects by themselves. */
  subject: 'i he she we they',
  /** Subjects when a verb follows; "massaged it" has none. */
  pronoun: 'it its that this there these those everyone everybody someone somebody you both all rest others',
  /** Words that begin a noun phrase. */
  determiner: 'the a an this that these those his her hers its their our my your each every some both all',
  possessive: 'his her their',
  preposition: 'of in on at from with to between under around over near for by into behind inside',
  /** Verbs by which a statement of its own is known. */
  finite:
    "is 's are 're was were am 'm has have 've had does do did will 'll would 'd can could might may should must got gets goes went " +
    'came comes looks looked feels felt seems seemed keeps kept ran ate drank took pulled stays stayed said says',
  /** Of these, such as plan or suppose; a present tense may tell a plan: "tomorrow | everybody gets booties". */
  planning: "will 'll would 'd can could might may should must gets goes comes stays keeps",
  /** Verbs by which a statement without a subject begins: "no swelling, wrapped it". */
  action:
    'massaged wrapped booted bootied put gave took rubbed cleaned washed trimmed stretched checked loaded dropped fed watered snacked ' +
    'dipped lapped wolfed inhaled nibbled barfed puked vomited kneaded salved taped clipped snipped cooled warmed rested ' +
    'ate drank refused moved swapped packed pulling pulled running ran trotting trots loping eating drinking parked came went threw',
  /** After these a verb's form is part of a denial or a passive, not a statement that begins. */
  auxiliary:
    "n't not never to be been being get getting all well just already really no a the his her i we he she they you",
  /** What follows "was" in a denial's own verb: "no swelling was seen". */
  passive:
    'seen noted found identified present heard reported appreciated observed there evident visible detected felt shown visualized demonstrated',
  /** After these a subject stands in a clause of the same statement: "hacking when | we hooked up". */
  subordinate: 'when while where after before until that who as how why what whenever than since',
  /** What a note turns to without an article: "no swelling | trail is fast". */
  topic:
    'trail wind snow sun sky weather feet team leaders wheelers everyone everybody pads tug tugs temp temperature gums stool urine',
  /** Parts that have a verb of their own: "neither hot nor swollen | toe is split". */
  part: 'wrist wrists shoulder shoulders elbow neck back hip knee hock tail leg foot pad web webs toe toes nail nails dewclaw eye ear nose',
  /** Signs of health by which a clipped note goes on: "not drinking, | gums tacky". */
  status: 'gums app appetite hyd hydration temp hr pulse bcs weight wt stool urine coat eyes',
  /** Words that name a limb or a side: after a comma they begin a new finding. */
  side: 'left right lf rf lh rh fl fr hl hr l r front hind rear both',
  /** Words of how much by which something is said to be there: "no heat, | slight swelling". */
  amount: 'some slight mild small tiny minor moderate faint',
  /** Numbers that begin something counted: "no splits | two booties lost". */
  count:
    'two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen twenty thirty forty fifty',
  /** Small words that may stand between a subject and its verb. */
  adverb: 'still also just never really only even already then now always actually kind sort ever yet',
  join: 'and n & + plus',
  or: 'or nor',
  /** In these a denial's own noun phrase ends, seen from its verb. */
  denier: "no any not n't or",
  /** Short forms that end in a point. */
  pointed: 'dr mr mrs ms vs approx st mt poss prob neg abt temp wt hr dept inc',
} as const;

/** Words that tell in the past tense. */
export const PAST_TENSE = new Set('was were had did been came threw'.split(' '));
