/** Scope words of time: what is gone, what was so on an earlier day, what is to come, what is still so. */
import type { CueGroup } from './scopes.ts';

/** Cues that say it was there and is gone. */
export const RESOLVED: CueGroup[] = [
  {
    name: 'no longer …',
    gives: 'resolved',
    direction: 'forward',
    reach: 'list',
    phrases: `
      no longer ; not any longer ; no more ; {is|'s|was|are|all} over {his|her|their|the|that}
      {got|gotten|getting} over {his|her|their|the|that} ; recovered from ; {has|have|'s|'ve} {stopped|quit} {his|her|}
      {stopped|quit} {limping|coughing|hacking|bleeding|vomiting|shivering|shaking|licking|favoring|scratching|panting|chewing}`,
  },
  {
    name: 'not … anymore',
    gives: 'resolved',
    direction: 'both',
    reach: 'list',
    anaphoric: true,
    phrases: `
      {not|n't|no|nobody 's|nobody|no one 's|none of them|neither|neither of them|neither one|neither dog|none|none of the dogs} … {anymore|any more|any longer} ; {has|have|had} {not|n't} … since ; from … {to normal|to nothing|to fine}`,
  },
  {
    name: '… is gone',
    gives: 'resolved',
    direction: 'backward',
    reach: 'statement',
    phrases: `
      {and|but|,|} {none|zero|nothing|no more|not once|not one|not again} since $ ; {he|she} {'s|has} firmed up {now|today|again|}
      {<been>} {gone|vanished|disappeared|subsided|resolved|healed|cleared} {up|away|now|today|completely|}
      {<been>} {all|completely|totally|fully|long} {gone|healed|cleared up|resolved|dried up}
      {<been>} {gone|went|going|goes} {right|all the way|} {away|down to nothing} ; gone {now|today|already}
      {<been>} {gone|went|came} {right|all the way|} down {to nothing|completely}
      {cleared|healed|dried} {right|} up {now|today|nicely|well|} ; {clears|clearing} up ; {<been>} closed {up|over} ; {has|have|'s} closed
      {<been>} grown {back|in|out|over} ; {<been>} {come|came} {right|good} ; {come|came|gone|went} out of {it|that|his|her|the}
      wore off ; worn off ; {worked|sorted} {itself|its way} {out|} ; worked out ; loosened up
      {bleeding|coughing|cough|vomiting|runs|diarrhea|limp|limping|shivering|licking|itching} {has|have|had|} {stopped|quit}
      {has|have} {stopped|quit} ; {snowball|snowballs|iceball|iceballs|ice ball|ice balls|ice|thorn|splinter|quill|quills|stick|burr} {<be>} {all|} out
      {<be>} out of {it|that|his|her|the|their}`,
  },
  {
    name: '…, fine now',
    gives: 'resolved',
    direction: 'backward',
    reach: 'statement',
    anaphoric: true,
    phrases: `
      {<it>} {<been>} {all|completely|totally|} {gone|healed|cleared up|fine|resolved} {now|today|up|again}
      {<it>} {<been>} {all|completely|totally|} {gone|healed|cleared up|resolved}
      {it|that|its} {<been>} {stopped|quit} {now|again|}
      {<it>} {<been>} {<ok>} {now|today|again} ; {<it>} {<been>} {all|} over {it|that|now}
      {it|that|they|those} {cleared up|went away|healed up|healed|wore off|disappeared}
      {<been>} {all|} {<ok>} {now|again|today|since} ; all {healed|gone|cleared up|better} ; no longer $
      back to normal ; back on {it|feed|his feed|her feed|food|his food|her food} {now|} ; right as rain ; good as new ; sound again ; {got|gotten|gets} over it
      {walked|ran|trotted|worked|shook|came|snapped} {out of|through|off} it ; {walked|ran|worked|shook} it {off|out}
      {none|nothing|no more|zero} {since|today|now} {then|}
      {ca|could|can} {n't|not} {find|see|feel} {any of it|a trace of it|any sign of it|anything of it} {now|today|this morning|any more|anymore|}
      {ca|could|can} {n't|not} {find|see|feel} it {now|today|this morning|any more|anymore}
      {there 's|there is|there was|} none {in|on|of} {it|that|there} {now|today|this morning|any more|anymore}
      {there 's|there is|} none left ; {<been>} {healthy|well|himself|herself} {again|now} ; {<be>} right again
      {there 's|there is|} {nothing|not a thing} {wrong|amiss|the matter} with {it|him|her|that|them} {now|today|this morning|any more|anymore}
      {it 's|it has|has|'s|} {run|ran|been|stayed|come} {clear|fine|normal|clean|yellow|sound|good} {ever|} since
      since {breakfast|then|lunch|supper|noon|that|this morning|last night} {,|} {however|though|} {,|} not {any more|anymore|once|again} ; {however|though} not any more
      which {it|he|she|they|} {is|are|'s} {not|n't} {so|} {today|now|any more|anymore|this morning}
      {has|have|'s|'ve|had} {not|n't} done {so|it|that} {since|again|today|once|now|at all|}
      {<been>|} {gone|healed|cleared|fine|normal|sound|over|better} {up|away|} by {<day>|<shortday>|evening|night|morning|the next day|the next morning|lunch|then|bedtime|suppertime}
      {<been>} {fine|good|ok|sound|normal} {since|ever since} {then|}
      {i|we|she|he|they|} {can|ca|could|do|did} {not|n't} {find|see|feel|detect} {any|a trace|a sign|anything|a hint} {of it|of that}
      {run|been|come|gone|stayed} {clear|normal|fine|clean|yellow} {ever since|since} {then|} ; {not|n't|nothing|none} {any more|anymore|any longer} $ ; {has|have|had|'s|is} healed over
      {today|now} not {any more|anymore|any longer} ; {but|and|though|} not {today|this morning} ; {but|and|though} not now ; not now $
      {nothing|not a thing|not much} {to see|there|left} {there|} {now|anymore|any more|today}
      {now|today} {<it>} {<been>} {<ok>} ; {looks|feels|seems|is|'s|looking|runs|moves|walks} {perfectly|completely|totally|quite|} {<ok>} {today|now|again|this morning|tonight}
      {ran|walked|trotted|warmed|worked|came} {right|} out of it
      {has|have|got|is|are|'s} {its|their|his|her} {own|old|usual|normal|right|proper} {shape|size|look|colour|color|self} {back|again}
      back to {its|their|his|her} {own|old|usual|normal|right|proper} {shape|size|look|colour|color|self}
      {that|it} {is|'s} {all|} over $
      {firm|formed} {ever|} since {then|} ; {do|does|is|are|'s|was|did|has|have} {n't|not} {today|now|this morning|tonight}`,
  },
  {
    name: 'was …, but is fine',
    gives: 'resolved',
    direction: 'backward',
    reach: 'statement',
    anaphoric: true,
    afterPast: true,
    phrases:
      '{<it>} {<be>} {<ok>} ; {<be>} {<ok>} {after|within|by|from} {a|an|the|that|about|one|two|three|} {mile|miles|while|bit|few|minute|minutes|stop|break|lunch|noon|hour|km|kilometre|kilometer|evening|night|then|there}',
  },
];

/** Cues that say it was so on an earlier day. */
export const PAST: CueGroup[] = [
  {
    name: 'yesterday',
    gives: 'past',
    direction: 'both',
    reach: 'statement',
    phrases: `
      yesterday {<daypart>|} ; day before yesterday ; the day before {yesterday|} ; the other {day|night|week}
      last {night|nite|week|month|year|season|winter|fall|autumn|spring|summer|weekend|time|run|trip}
      {on|last|this|} {past|} <day> {<daypart>|} ; {on|last|this} {past|} <shortday> {<daypart>|} ; <shortday> <daypart> ; sun $
      <few> {of|} <ago> {ago|back} ; {a few|a couple|a couple of} <ago> {ago|back} ; a while {ago|back}
      earlier {this|in the} {week|month|season|winter} ; {back|} in <month> ; <shortmonth> $ ; sat $ ; the same {night|day|evening|weekend} ; on the … of <month> ; on the <nth> ; that {night|nite|evening|day|week|month|season|winter|year} ; back then
      as a {pup|puppy|yearling} ; used to ; previously ; in the past`,
  },
];

/** Cues that say it is to be, or hangs on something. */
export const PLANNED: CueGroup[] = [
  {
    name: 'if …',
    gives: 'planned',
    direction: 'forward',
    reach: 'plan',
    clause: 'full',
    condition: true,
    phrases: `
      if ; even if ; {let|tell} {me|us|them} {know|} if ; unless ; should {he|she|it|they} ; in the event`,
  },
  {
    name: 'will …',
    gives: 'planned',
    direction: 'forward',
    reach: 'plan',
    clause: 'subject',
    phrases: `
      {will|'ll|shall|should|gotta} ; can {stay|rest|ride|sit|start|have|take}
      {am|'m|is|'s|are|'re|} {going to|gonna|gunna|fixing to|about to|planning to|planning on|hoping to|aiming to}
      {plan|plans|plan is|hope|intend|aim|need|needs|have|has|ought|remember} to ; plan {:|is}
      i 'd {like|rather|prefer|love|want} {to|} ; {i|we} {thought|figured|reckoned|figure|reckon|think} {i|we} 'd {have|run|put|take|try|start|keep|hook|rest|give|do|let|go} ;
      {wants|want} to {take|try|put|keep|drive|hook} ; {let 's|lets|let us} ; do n't forget ; time to`,
  },
  {
    name: 'tomorrow',
    gives: 'planned',
    direction: 'both',
    reach: 'heading',
    phrases: `
      {for|} <tomorrow> {<daypart>|a.m.|am|} ; {for|} <tomorrow> {it 's|it is|its} {the|a|} ;
      {on|this|} {<day>|<shortday>} {i|we|he|she|they} {get|gets|take|takes|run|runs|go|goes|drive|drives|stay|stays|rest|rests|leave|leaves|have|race|want|wants|do|hook|start|starts} ; day after <tomorrow> ; first thing <tomorrow> ; plan for <tomorrow> ; {plan|plans|lineup|line up} for …4 <tomorrow> ;
      for <day> 's {start|race|run|trip|tour|loop|training|team} ; for {<day>|<shortday>} {it 's|it is|i 'm|i 'd|we 're|i 'll|we 'll|i want|i will|we will}
      {'s|is|are|'re|'m|am} {taking|running|driving|racing|leaving|heading|resting} …4 {on|} <day> ;
      next {time|week|run|day|trip|stop|break|checkpoint|snack|month|season|year|weekend|<day>} ; come {morning|monday|spring}
      the next few days ; from now on`,
  },
];

/** What brings back that it is there: "was limping yesterday and still is", "the cough hasn't cleared up". */
export const STILL: CueGroup[] = [
  {
    name: '… still is',
    gives: 'present',
    direction: 'backward',
    reach: 'statement',
    anaphoric: true,
    phrases: `
      {<it>|} still {is|are|has|does|there|the same} ; {<it>|and|but} {<be>} still {there|the same|at it|going|so|}
      again {today|now|this morning} ; same today
      {not|n't} {quite|fully|completely|all|really|yet|} {gone|healed|cleared|over|resolved|stopped} {up|away|down|yet|}`,
  },
];

/** "… in December, and a sore wrist then": where an earlier day was told, a cue of that day. */
export const THEN: CueGroup = { name: '… then', gives: 'past', direction: 'backward', reach: 'statement', phrases: '' };

/** "Sam's taking the pups Saturday": a day whose name alone would be the last of that name. */
export const DAY_TO_COME = PLANNED.find((g) => g.name === 'tomorrow') as CueGroup;
