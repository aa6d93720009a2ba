/**
 * Words that change what is said of a finding: "no", "might", "is gone", "yesterday", "tomorrow", "if".
 *
 * In the manner of ConText (Harkema et al., J Biomed Inform 2009;42:839): a cue gives an assertion to what stands in
 * its scope. Phrases that look like a cue and are none, and words that end a scope, stand in `scope-ends.ts`. How far
 * a scope reaches is decided in `steps/scopes.ts`.
 *
 * Phrases are written as tokens (`ca n't`, `w / o`), parted by `;` or a line's end. Notation: `{a|b|}` one of these or
 * nothing · `<day>` a word of the list of that name · `…` up to six words between (the cue then also reaches the words
 * inside it) · `$` only before a mark or the note's end.
 */
import { PAST, PLANNED, RESOLVED, STILL } from './scope-times.ts';

/** `present`: says again that it is there. */
export type Gives = 'absent' | 'possible' | 'resolved' | 'past' | 'planned' | 'present';
export type Direction = 'forward' | 'backward' | 'both';
/**
 * How far a scope goes. `word`: the words of the phrase itself. `list`: over commas and "or", not into a new statement.
 * `near`: to the next comma, unless an "or" goes on after it. `statement`: to the borders of the statement. `outlook`:
 * over the commas and names of a forecast. `plan`: on through names and pronouns until something is told that has
 * happened. `heading`: as a plan, and over the sentences after it that have no verb of their own.
 */
export type Reach = 'word' | 'list' | 'near' | 'statement' | 'outlook' | 'plan' | 'heading';

export interface CueGroup {
  name: string;
  gives: Gives;
  direction: Direction;
  reach: Reach;
  /** A subject right after the cue does not end it: "maybe | he's lame"; `full`: nor does its verb, "I think | Fern | pulled a muscle". */
  clause?: 'subject' | 'full';
  /** Speaks of what was said just before, over "but" and a full stop: "…, but it's gone now". */
  anaphoric?: true;
  /** Only for what is told of in the past tense or on an earlier day: "was limping, but she's fine". */
  afterPast?: true;
  /** Beats every other cue: what hangs on an *if* is neither so nor not so. */
  condition?: true;
  /** Holds "not" in itself and outweighs it: "might not be lame" leaves it open. */
  hedges?: true;
  /** A denial before it ends here: "nothing in the foot | might be the knee". */
  breaks?: true;
  phrases: string;
}

/** Lists that phrases may name, their items parted by commas; an empty item: or nothing. */
export const LISTS: Record<string, string> = {
  day: 'monday,tuesday,wednesday,thursday,friday,saturday,sunday,mon,tue,tues,wed,weds,thu,thur,thurs,fri',
  shortday: 'sat,sun',
  daypart: 'night,nite,evening,morning,morn,afternoon',
  month: 'january,february,march,april,june,july,august,september,october,november,december,jan,feb,oct,nov,dec',
  shortmonth: 'jan,feb,apr,jun,jul,aug,sept,oct,nov,dec,january,february,november,december',
  ago: 'day,days,week,weeks,month,months,year,years,season,seasons,run,runs',
  few: 'a,one,two,three,four,five,six,seven,eight,nine,ten,couple,few,several',
  be: "is,'s,was,are,'re,were",
  been: "is,'s,was,are,'re,were,has,have,'ve,had,has been,have been,'s been,",
  it: 'it,its,that,he,she,they,those,these,this,all of it',
  ok: 'fine,good,ok,okay,sound,alright,all right,normal,clear,clean,well',
  so: 'very,too,that,so,really,quite,particularly,all that,',
  find: 'see,find,feel,notice,spot,detect,seeing,finding,feeling',
  think: 'think,reckon,guess,suppose,believe,expect,fancy,imagine,figure,suspect,thought,figured,guessed',
  upto99:
    'two,three,four,five,six,seven,eight,nine,ten,eleven,twelve,thirteen,fourteen,fifteen,sixteen,seventeen,eighteen,nineteen,twenty,thirty,forty,fifty,sixty,seventy,eighty,ninety,zero',
  nth: '1 st,2 nd,3 rd,4 th,5 th,6 th,7 th,8 th,9 th,10 th,11 th,12 th,13 th,14 th,15 th,16 th,17 th,18 th,19 th,20 th,21 st,22 nd,23 rd,24 th,25 th,26 th,27 th,28 th,29 th,30 th,31 st',
  tomorrow: 'tomorrow,tmrw,tmrrw,tomorow,tommorow,tommorrow,tmw',
};

/** Cues that say it is not there. */
const ABSENT: CueGroup[] = [
  {
    name: 'no …',
    gives: 'absent',
    direction: 'forward',
    reach: 'list',
    phrases: `
      no ; nil ; {zero|0} {dog|dogs|lame|lameness|coughing|coughs|vomiting|diarrhea|diarrhoea|sore|soreness|shivering|swelling|heat|limp|limping|limps|cuts|splits|rubs|ice|wind|blood|pain|issues|problems|signs of} ; no {new|further|other|obvious|visible|real|significant|apparent|definite}
      no {evidence|sign|signs|hint|trace|trail|indication|suggestion|suspicion|symptoms|complaint|complaints|history} of
      no {findings|finding|evidence|signs} {to suggest|suggesting|suggestive of|for}
      no {problem|problems|trouble|issue|issues} with
      not {a|an|any|one|a single}
      {not|n't} {a|any|one|a single} {hint|sign|trace|whiff|bit|scrap} of
      devoid of ; lack of ; lacks ; lacking ; absence of ; {clear|clean|free} of ; free from ; nary {a|an|}`,
  },
  {
    name: 'not …',
    gives: 'absent',
    direction: 'forward',
    reach: 'near',
    phrases: `
      not ; n't ; ai not ; nor ; neither ; without ; w / o ; w / out ; never ; instead of ; rather than
      {n't|can not|not} {<find>} {wrong|amiss|the matter} {with|in|on|}`,
  },
  {
    name: 'not any …',
    gives: 'absent',
    direction: 'forward',
    reach: 'list',
    phrases: `
      {n't|can not|not} <find> {any|anything|a thing|}
      {n't|can not|not} {<find>} {any|anything|a thing} {wrong|amiss|the matter|} {with|in|on|}
      {not|n't} {reveal|show|demonstrate|appreciate|have|had|develop|report|complain of|appear|feel|suggest|indicate|exhibit}
      {not|n't} {seen|noticed|caught|heard|known|see|notice|hear|catch} {him|her|them|it|any of them}
      {not|n't} so much as {a|} ; {not|n't} {have|had|got|get|seen|found|<find>} any {more|} ; not {associated with|known to have|know of} ; unremarkable for
      without {any|a|evidence of|any evidence of|sign of|signs of|any sign of|any signs of}
      never {saw|had|found|felt|noticed|developed|complained of} {any|a|} ; never {diagnosed|treated} {with|for}
      not {consistent|compatible} with ; {fails|failed} to {show|reveal|demonstrate}`,
  },
  {
    name: 'nothing …',
    gives: 'absent',
    direction: 'forward',
    reach: 'list',
    phrases: `
      nothing {you|i|we} {'d|would|could} call {a|} ; nothing {like|resembling} a ; nothing ; nothing {wrong|the matter|amiss} {with|in|on|at} ; nothing {in|on|at|between|under|around}
      none of ; neither of ; nobody ; nobody 's ; no one ; no dog`,
  },
  {
    name: 'denies …',
    gives: 'absent',
    direction: 'forward',
    reach: 'list',
    phrases: `
      {denies|denied|deny|denying} {any|having|having any|}
      {denies|denied|deny|denying} {any|} {history|symptoms|symptom|signs|evidence|complaints|use} of
      {negative|neg|neg .|- 've} {for|for any|for evidence of}
      {ruled|rules} out {any|} ; {ruled|rules} {him|her|it} out for`,
  },
  {
    name: 'not seen …',
    gives: 'absent',
    direction: 'forward',
    reach: 'near',
    clause: 'full',
    phrases: `
      {have|has|'ve|had|i 've} {not|n't} {seen|noticed|heard|caught|known} ; never {saw|seen|noticed|heard|caught}
      {did|do|could|can|ca} {not|n't} {see|notice|hear|catch}`,
  },
  {
    name: 'do not think …',
    gives: 'absent',
    direction: 'forward',
    reach: 'list',
    clause: 'subject',
    phrases: `
      {not|n't} {think|believe|suspect|reckon|suppose} {that|} ; would {not|n't} {say|call it|call}
      {denies|denied} that ; no {reason|cause} to {think|believe} {that|}`,
  },
  {
    name: '… ruled out',
    gives: 'absent',
    direction: 'backward',
    reach: 'statement',
    phrases: `
      {<been>} {ruled out|excluded} ; {<be>} {negative|absent|nonexistent|unlikely}
      {<be>} {not|n't} {seen|found|present|there|noted|visualized|identified|felt|evident|appreciated|observed|visible}
      {not|none} {seen|found|present|noted|evident|identified} ; not been {seen|found|noted|identified}
      {is|are|was|were} {zero|nil|none|0} $ ; {:|-} {none|no|nope|nil|neg|negative|0|zero} $ ; ? {none|no|nope|nah|nil} ; {none|no|nope|nil|neg|negative} $`,
  },
];

/** Cues that say it may be there. */
const POSSIBLE: CueGroup[] = [
  {
    name: 'might …',
    gives: 'possible',
    direction: 'forward',
    reach: 'near',
    clause: 'subject',
    breaks: true,
    phrases: `
      {might|may} {be|have|well be|just be|} ; could {be|have|well be|just be} ; must {be|have}
      {might|may} {yet|still|well|just|} {have to|need to}
      {maybe|perhaps|mebbe|presumably|possibly|probably|prob|prob .}
      {seem|seems|seemed|seeming} {to be|to have|like|as if|as though|a bit|} ; {appears|appeared} {to be|to have|} ; {looks|looked} to {be|have}
      {verging on|bordering on|borderline} ; {coming|come|came|going} down with ; what {looks|looked} like
      {rule|ruling} out ; {rule|ruling} {it|him|her} out for ; {check|checking|watch|watching|test|testing|tested} {him|her|them|it|} for
      {n't|not} rule out`,
  },
  {
    name: 'might not …',
    gives: 'possible',
    direction: 'forward',
    reach: 'near',
    clause: 'subject',
    breaks: true,
    hedges: true,
    phrases: '{might|may|probably|perhaps|maybe|possibly|likely} not {be|have|a|an|}',
  },
  {
    name: 'wonder if …',
    gives: 'possible',
    direction: 'forward',
    reach: 'near',
    clause: 'full',
    breaks: true,
    hedges: true,
    phrases: `{i|i do|i 'm|} {wonder|wondered|wondering} {if|whether|} {that|} ; {not|n't} {sure|certain} that ; i should n't wonder if`,
  },
  {
    name: 'possible …',
    gives: 'possible',
    direction: 'forward',
    reach: 'near',
    clause: 'subject',
    phrases: `
      something {wrong|up|off|going on|not right|funny|} {with|in} ; possible ; poss ; poss . ; potential ; potentially ; questionable ; query ; probable ; likely
      {suspect|suspects|suspected|suspicious for|suspicion of}`,
  },
  {
    name: 'I think …',
    gives: 'possible',
    direction: 'forward',
    reach: 'near',
    clause: 'full',
    breaks: true,
    phrases: `
      i {<think>} {that|maybe|} ; {thinks|reckons|guesses|believes|figures|suspects|wonders} {that|if|whether|} ; i {bet|'d bet|'d say|'d guess} {if|whether|that|}
      i 'm {thinking|guessing|wondering|afraid|worried|a bit worried|a little worried} {if|whether|that|}
      {looks|looking|look|looked|sounds|feels|acts|acting} {like|as if|as though}
      {keep|keeping} {an|} eye on {if|whether|how} ; {will|'ll|} {watch|watching|see|check|find out|know|ask|asked|asks} {if|whether}
      {not|n't} {sure|certain|clear|positive|convinced} {if|whether|that|} ; {not|n't} know {if|whether|that}
      {not|n't} {tell|say|decide} {if|whether} ; hard to {say|tell} {if|whether} ; {no|any} idea {if|whether}
      {worried|afraid|concerned|worry} {that|about|} ; in case ; whether
      {it is|it 's|its} {quite|just|also|} {conceivable|possible|likely|probable|plausible|thinkable} {that|}`,
  },
  {
    name: 'calling for …',
    gives: 'possible',
    direction: 'forward',
    reach: 'outlook',
    clause: 'subject',
    phrases: `
      {calling|calls|call} for ; {promise|promised|promises|predict|predicted|predicting|predicts} ; {announce|announced|announces|announcing} ; {forecast|forecasts} {is|is for|says|calls for|has|of|for|}
      {weather|radio|forecast} {man|guy|lady|fella|fellow|} {says|said|has|calls for} ; forecasting ; {says|say|said} there 's ; {supposed to|expected to|expecting|expect|they expect|they say|promising}
      {a|some|good|fair|} chance of ; threatening ; risk of ; brewing`,
  },
  {
    name: '… , maybe',
    gives: 'possible',
    direction: 'backward',
    reach: 'statement',
    phrases: `
      {,|} {maybe|perhaps|probably|possibly|i think|i guess|i reckon|i suppose|i believe} $ ; , {maybe|perhaps|probably|possibly} , {against|from|but|though|in|on|at} ; {n't|not} be {ruled out|excluded}
, {they say|they 're saying|they said|says the radio|says the forecast|the radio says|the forecast says|so they say} $ ; , {they say|they 're saying|so they say|says the radio|says the forecast} ,
      {likely|expected|forecast|possible} {by|tonight|overnight|later|tomorrow|this} ; likely $ ; expected $
      {forecast|predicted|expected|promised|due} {for|on} {<day>|<shortday>|the weekend} {<daypart>|}
      {is|are|'s|was} {forecast|predicted|expected|promised|due} {for|tonight|later|tomorrow|this|by|to|}
      {warning|advisory} {for|on|tonight|tomorrow|this|from|} ; {coming|due|predicted|promised} {by|in|later|tonight|overnight|this}
      {in|on} the forecast ; due {on|in|over|at|for|before|after} {the|} ; {<be>} {possible|suspected|likely|probable|questionable} ; not {ruled out|excluded}`,
  },
];

/** In the order they are tried: of two readings as long at one place, the earlier is taken. */
export const CUES: readonly CueGroup[] = [...ABSENT, ...POSSIBLE, ...RESOLVED, ...PAST, ...PLANNED, ...STILL];
