/** The team: places on the gangline, groups of dogs, pronouns, and the verbs that put a dog in, move it or take it out. */
import type { Row } from './table.ts';

export const team: readonly Row[] = [
  // Places
  [
    'position',
    'lead',
    'lead; leader; leaders; up front; single lead; double lead; co-lead; out front; the front; leading; out in front; at the front; in the lead position; in front; in the front; way up front; up in front',
  ],
  ['position', 'swing', 'swing; point; swing dog; swing dogs'],
  ['position', 'team', 'team; team dog; team dogs; the middle; middle of the team; team pair; in the body'],
  [
    'position',
    'wheel',
    'wheel; wheeler; wheelers; wheel dog; wheel dogs; at the sled; by the sled; against the sled; closest to the sled; nearest the sled; nearest to the sled; right in front of the sled; right by the sled; at the back; in back; at the rear; in the rear; at the very back',
  ],

  // Groups that the line-up spells out
  [
    'group',
    'all',
    'everyone; everybody; every dog; every one of them; every last one; every one of the dogs; every single dog; each dog; each of them; all dogs; all the dogs; all my dogs; all of the dogs; all of the team; the whole team; whole team; whole teams; the whole teams; whole crews; whole crew; the whole crew; the whole lot; the whole bunch; the whole gang; the whole string; the whole yard; the whole kennel; whole yard; the entire team; entire team; the team; my team; the crew; the gang; the string; the dogs; dogs; all round; all around; all hands; all the team; team wide; across the board; the whole pack; the pack; the lot of them; everyone in the team; everybody in the team; all; each one; anyone; anybody; any of them; any of em; any dog; any of the dogs; all two; all six; all seven; all eight; all nine; all ten; all eleven; all twelve; all fourteen; all sixteen; all 6; all 8; all 10; all 12; all 14; all 16; all of us; the kids all; the bunch; these guys; the guys; you guys; the mob; the squad; whole squad; whole bunch; whole gang; whole kennel; the team as a whole; every body; every one; the whole outfit; whole outfit; every one of em; every last one of em; every one of the team; every dog in the team; the lot; all the lot; the whole shebang; whole shebang; the whole works; all the critters; the whole bunch of them; the whole lot of them; every mutt; all hands on deck; all of the crew; all the crew; all the kids; every dog in the string; each and every one; every blessed one; every blessed one of them; the full team; full team; the hounds; all the hounds; the mutts; all the mutts; the entire crew; entire crew; entire string; the entire string; all ten of them; all eight of them; all six of them; all of the lot; any member of the team; any member; any of the team; every member of the team; each member of the team; all members of the team; any of the crew; any of the bunch; any of the lot; all four of em; all four of the dogs; all five of em; all five dogs; all five of the dogs; all six of em; all six dogs; all six of the dogs; all seven of them; all seven of em; all seven dogs; all seven of the dogs; all eight of em; all eight dogs; all eight of the dogs; all nine of them; all nine of em; all nine dogs; all nine of the dogs; all ten of em; all ten dogs; all ten of the dogs; all eleven of them; all eleven of em; all eleven dogs; all eleven of the dogs; all twelve of them; all twelve of em; all twelve dogs; all twelve of the dogs; all thirteen of them; all thirteen of em; all thirteen dogs; all thirteen of the dogs; all fourteen of them; all fourteen of em; all fourteen dogs; all fourteen of the dogs; all fifteen of them; all fifteen of em; all fifteen dogs; all fifteen of the dogs; all sixteen of them; all sixteen of em; all sixteen dogs; all sixteen of the dogs',
  ],
  [
    'group',
    'middle',
    'the middle pair; middle pair; the middle two; the two in the middle; the pair in the middle; the middle ones',
  ],
  ['group', 'them-all', 'they all; them all; em all; all of them; all of em'],
  [
    'group',
    'none',
    'nobody; no one; none of them; none of em; not one of them; not one of em; not a one of them; not a one of em; not a dog; nary a one; nary a dog; not a single one; not a single one of them; not a single dog; not one dog; no dog; no dogs; none of the dogs; not a one; nobody in the team',
  ],
  [
    'group',
    'lead',
    'the two at the front; the pair at the front; the front two; front two; the two in front; leaders; the leaders; both leaders; my leaders; lead dogs; the lead dogs; both lead dogs; each leader; each of the leaders; every leader; each of my leaders; each lead dog; each of the lead dogs; every lead dog; my lead dogs; the lead pair; lead pair; the front pair; the front end; the two leaders; the two up front; the pair up front; both up front; front runners; leads; the leads; both leads; my two leaders; two leaders; both the leaders; both of the leaders; both my leaders; the two in lead; two in lead; the pair in lead; both in lead; the two leading; the pair leading',
  ],
  [
    'group',
    'swing',
    'swing dogs; the swing dogs; both swing dogs; each swing dog; each of the swing dogs; every swing dog; each of my swing dogs; swing pair; the swing pair; my swing dogs; both swings; the swings; the two swing dogs; both point dogs; point dogs; the point dogs; point pair; both in swing; the pair in swing; the two in swing; my swing pair; swings; the swing; both swing; both the swing dogs; both of the swing dogs',
  ],
  [
    'group',
    'team',
    'team dogs; the team dogs; both team dogs; all the team dogs; the dogs in team; the middle dogs; team pairs; my team dogs; the team pair; the team pairs; both the team dogs; both of the team dogs',
  ],
  [
    'group',
    'wheel',
    'the two at the back; the pair at the back; the back two; back two; the back pair; the two in back; wheel dogs; the wheel dogs; both wheel dogs; each wheeler; each of the wheelers; every wheeler; each of my wheelers; each wheel dog; each of the wheel dogs; every wheel dog; wheelers; the wheelers; both wheelers; wheel pair; the wheel pair; my wheel dogs; my wheelers; the two wheelers; the two wheel dogs; both in wheel; the pair in wheel; the two in wheel; both at wheel; wheels; the wheels; both wheels; both the wheelers; both of the wheelers; both the wheel dogs; both of the wheel dogs; both my wheelers',
  ],
  [
    'group',
    'left',
    'the left side; left side; the whole left side; whole left side; the entire left side; entire left side; all of the left side; left hand side; the left hand side; left side dogs; the left side dogs; the left dogs; everyone on the left; everybody on the left; everybody on the left side; everyone on the left side; the left line; the dogs on the left; all the left side; the left hand dogs; l side; the l side; left hand dogs; everything on the left; all on the left',
  ],
  [
    'group',
    'right',
    'the right side; right side; the whole right side; whole right side; the entire right side; entire right side; all of the right side; right hand side; the right hand side; right side dogs; the right side dogs; the right dogs; everyone on the right; everybody on the right; everybody on the right side; everyone on the right side; the right line; the dogs on the right; all the right side; the right hand dogs; r side; the r side; right hand dogs; everything on the right; all on the right',
  ],
  [
    'group',
    'F',
    'the girls; girls; the ladies; ladies; females; the females; bitches; the bitches; all the girls; my girls; the gals; gals; all the females; all the ladies; both the girls; both of the girls; both girls; the two girls',
  ],
  [
    'group',
    'M',
    'the boys; boys; males; the males; all the boys; my boys; the lads; lads; the fellas; all the males; the fellows; the gentlemen; both the boys; both of the boys; both boys; the two boys',
  ],
  [
    'group',
    'both',
    'either; both; both of them; both of em; both dogs; the both of them; the both of em; the two of them; the two of em; those two; these two; them both; they both; the pair; the pair of them; that pair; the pair of em; those 2; both of those; each of the two; either of them; either of em; the two; both of these; for both',
  ],
  [
    'group',
    'count',
    'none of the two; none of the three; none of the four; none of the five; none of those three; none of those four; those three; those four; those five; those six; the three of them; the four of them; the five of them; the six of them; all three; all four; all four of them; all five; these three; these four; these five; all three of them; all five of them; the three; the four; the five; all three dogs; all four dogs; the trio',
  ],
  [
    'group',
    'rest',
    'the remaining two; the remaining three; the remaining four; the remaining five; the remaining six; the remaining seven; the remaining eight; the remaining nine; the other two; the other three; the other four; the other five; the other six; the other seven; the other eight; the other nine; the other ten; the other twelve; other two; other three; other four',
  ],
  [
    'group',
    'rest-F',
    'the other girls; other girls; the other females; the other ladies; the rest of the girls; the other two girls; the other three girls; the other two females; the other three females; other two girls; other three girls',
  ],
  [
    'group',
    'rest-M',
    'the other boys; other boys; the other males; the other lads; the rest of the boys; the other two boys; the other three boys; the other two males; the other three males; other two boys; other three boys',
  ],
  [
    'group',
    'mine',
    'my four; my five; my six; my seven; my eight; my nine; my ten; my twelve; my own six; all of mine; mine all; all mine; my own dogs; all of my own; my own team',
  ],
  [
    'group',
    'neither',
    'neither; neither of them; neither of em; neither dog; neither one; neither of the two; neither of those two; neither pup',
  ],
  [
    'group',
    'rest',
    'the rest; rest; the rest of them; the rest of em; the others; others; everyone else; everybody else; all the others; all others; the other dogs; all the rest; the rest of the team; rest of the team; rest of them; rest of em; the remaining dogs; the remaining ones; remaining dogs; the remainder; other dogs; all the other dogs; the rest of the dogs; the rest of the crew; everyone other; the rest of the gang; anyone else; anybody else; no one else; nobody else; none of the others; none of the rest',
  ],
  [
    'group',
    'other',
    'the other one; other one; the other dog; the other; the other fellow; the other girl; the other boy; the other guy',
  ],
  [
    'group',
    'other-lead',
    'the other leader; other leader; the other lead; other lead; the other lead dog; other lead dog; my other leader; the other one in lead; the other one up front',
  ],
  [
    'group',
    'other-swing',
    'the other swing dog; other swing dog; the other swing; other swing; the other one in swing; my other swing dog; the other point dog',
  ],
  ['group', 'former', 'the former; the first of them; the first of the two'],
  ['group', 'latter', 'the latter; the second of them; the second of the two; the last named'],
  ['group', 'the-lead', 'the leader; my leader; the lead dog; my lead dog; our leader'],
  ['group', 'other-team', 'the other team dog; other team dog'],
  [
    'group',
    'other-wheel',
    'the other wheel dog; other wheel dog; the other wheeler; other wheeler; the other wheel; other wheel; the other one in wheel; my other wheel dog',
  ],
  ['group', 'left-lead', 'the left leader; left leader; my left leader; the left lead dog; left lead dog'],
  ['group', 'right-lead', 'the right leader; right leader; my right leader; the right lead dog; right lead dog'],
  ['group', 'left-swing', 'the left swing dog; left swing dog'],
  ['group', 'right-swing', 'the right swing dog; right swing dog'],
  ['group', 'left-wheel', 'the left wheel dog; left wheel dog; the left wheeler; left wheeler'],
  ['group', 'right-wheel', 'the right wheel dog; right wheel dog; the right wheeler; right wheeler'],
  [
    'group',
    'told',
    'the two old ladies; the old ladies; the old girls; the youngsters; the young ones; the pups; the yearlings; the old boys; the two old girls; the two youngsters; the two young ones; the two old boys; the new dogs',
  ],

  [
    'except',
    true,
    'except; except for; exc; excl; excluding; but; apart from; aside from; bar; barring; other than; minus; save; save for; with the exception of; besides; not counting; ex; excepting; bar for; all but',
  ],

  // He, she and the like
  ['pronoun', 'M', 'he; him; his; himself'],
  ['pronoun', 'F', 'she; her; hers; herself'],
  ['pronoun', 'they', 'they; them; em; their; theirs; themselves'],

  // Prepositions after which a dog is company, not the one spoken of
  [
    'company',
    true,
    'with; to join; joined; joins; joining; join; has joined; have joined; beside; next to; alongside; behind; ahead of; in front of; at; than; as; like; instead of; from; past; against; in place of; in for; between; near; by; w; opposite; across from; after; before; over; partnered with; paired with; around; toward; towards; for; without; since',
  ],
  [
    'prep',
    true,
    'on; in; of; to; off; into; onto; around; round; through; all over; under; between; up; down; inside; from; for',
  ],

  // Verbs
  [
    'move',
    true,
    'moved; move; moving; put; putting; swapped; swap; swapping; switched; switch; switching; pulled; brought; bring; bringing; shifted; shift; shifting; bumped; bump; bumping; stuck; slid; dropped; traded; changed; trade; rotated; rotate; rotating; promoted; demoted; sent; stepped; took; taken; goes; went; go; gone; come; comes; came; tried; trying; try; ran; run; running; slotted; popped; hooked; hooking; hook; clipped; snapped',
  ],
  [
    'swap',
    true,
    'swapped; swap; swapping; switched; switch; switching; traded; trade; traded places; swapped places; switched places; changed places; flip flopped; flipped; exchanged; trading; flip; made the exchange; made an exchange; make the exchange; made the swap; made a swap; made the switch; made a switch; did a swap; did a switch; exchange; exchanging; exchanges',
  ],
  [
    'move-only',
    true,
    'moved; move; moving; swapped; swap; swapping; switched; switch; switching; shifted; shift; shifting; bumped; bump; bumping; pulled; traded; trade; rotated; rotate; rotating; promoted; demoted; brought; bring',
  ],
  [
    'back-in',
    true,
    'back in; back into; back in the team; back in harness; back on the line; back on the gangline; back on the team; back in line; back in again; out of the bag; out of bag; back in place; back in his spot; back in her spot; back in the lineup; rejoined; back to the team; back in the string',
  ],
  [
    'in-for',
    true,
    'in for; in place of; in his place; in her place; in their place; taking over for; takes over for; took over for; to replace; replaces; replaced; replacing; filling in for; filled in for; fills in for; in his spot; in her spot; takes his place; takes her place; took his place; took her place; takes his spot; takes her spot; takes over; took over; subbed in; subbing for; into his spot; into her spot; into his place; into her place; goes in for; going in for',
  ],
  [
    'drop',
    'loaded',
    'loaded; load; loading; loads; loaded up; in the bag; in the sled bag; riding; rides; rode; riding in the sled; riding in the bag; riding in the sled bag; riding in the basket; in the basket; in the sled; into the sled; into the bag; into the basket; carried; carrying; in sled; in bag; ride; carry; bagged; bag; bagging; hitching a ride; getting a ride; got a ride; passenger; in the sled bag now; on board; aboard; hauled in the sled; zipped in the bag; tucked in the bag; stuffed in the bag; basketed; basket; gets a ride; became cargo; is cargo; turned cargo; as cargo; is cargo now; becomes cargo; became baggage; is baggage; as baggage; became luggage; became a passenger; becomes a passenger; is a passenger; turned passenger; ride shotgun; rides shotgun; riding shotgun; rode shotgun',
  ],
  [
    'drop',
    'dropped',
    'dropped; drop; dropping; drops; left; leave; leaving; taken out; scratched from the team; out of the team; pulled from the team; pulled from the line; unhooked; shipped home; flown out; flew out; sent home; sending home; handed over; handed off; returned; out of the race; returning; took out of the team; pulled out of the team; taken out of the team; took out; pulled; sent back; out of the line',
  ],
  [
    'drop',
    'home',
    "stayed home; stays home; stay home; staying home; left home; left at home; kept home; keeping home; keep home; kept at home; home; at home; sitting out; sat out; sits out; sit out; sitting this one out; stay behind; stayed behind; staying behind; not running; didn't go; did not go; didn't run; did not run; off today; day off; a day off; the day off; is home; was home; kept back; held back; stayed in the yard; left in the yard; out of the lineup; stayed at home; staying at home; stay at home; stayed in; benched; on the bench; sidelined; not going; isn't going; keeping back; hold back; holding back; skipping this one; in the yard today; sat this one out; sits this one out; rest day; resting at home; resting today; can't run; cannot run; can't go; won't be running; won't be going; isn't running; not gonna run; not going to run; staying put; stays put; sits this one; sits tomorrow out; sitting tomorrow out; stays behind; gets left home; left behind at home; stays back; stayed back; kept her home; kept him home; stays in the yard; staying in the yard; stays in the kennel; stayed in the kennel; not in the team; not in the lineup; out of tomorrow's team; not coming; isn't coming; wasn't running; wasn't in the team; did not come; didn't come; didn't come along; doesn't come; doesn't run; sits it out; sat it out; sitting it out; sit it out; sits one out; sat one out; sits out tomorrow; rides the couch; rests at home; stays with the pups; stays on the chain; stays on her chain; stays on his chain; gets to stay home; didn't make the team; didn't make the cut; not on the team; isn't on the team; isn't in the team; wasn't on the team; left off the team; is left behind; not part of the team; is staying back; staying back; scratched before the start; scratched from the start",
  ],
  [
    'hitch',
    true,
    "hooked up; hooking up; hook up; hitched; hitched up; hitching; hitching up; harnessed; harnessed up; running with; running; ran; run; lineup; line up; driving; drove; drives; drive; has; had; have; took; taking; takes; 's got; got; with; team is; team today; lineup is; started; starting; starts; start; takes out; took out; bringing; going out with; out with; skiing; skied; skijoring; skijored; on skis; canicross; on the kicksled; on the small sled; on the other sled; on the second sled; kicksled; kick sled; skis; four wheeler; quad; driven by",
  ],
  [
    'driving',
    true,
    "have; take; will have; run; follows with; is following with; driving; drove; drives; drive; has; had; took; taking; takes; 's got; got; with; ran; runs; running; skiing; skied; skijoring; skijored; is driving; was driving; 's driving; has got; 's running; is running; handled; handling; mushing; mushed; out with; went out with; going out with; is taking; 's taking; 'll take; will take; will drive; will run; is out with; 's out with; hooked up; hitched; following with; behind with; is skiing; 's skiing; took out; brought; bringing; leads; pulled by; follows; following; is following; rides; is riding; rides behind; is behind; comes along with; comes behind; came along behind with; came on behind with; came along after with; came up behind with; coming behind with; coming along behind with; is coming behind with; 's coming behind with; is coming along behind with; followed with; followed behind with; followed on with; followed along with; followed us with; followed me with; came behind with; came behind us with; came behind me with; is behind us with; is behind me with; was behind us with; was behind me with; was behind with; comes along behind; is up behind; is out behind; has hooked up; hooks up; hooks; runs with; is running with; steers; is steering; has charge of; is on the runners behind; stands behind; stood behind; skis behind; skied behind; skijoring behind; is skijoring; skijors with; skied with; skis with; gets; get; 'll get; will get; gets his own team; gets her own team; gets his own sled; gets her own sled; gets a team; has his own team; has her own team; has her own sled; has his own sled; takes his own team; takes her own team; drives his own team; drives her own team; runs his own team; runs her own team; gets the second sled; gets the second team; gets the other team; gets the other sled",
  ],
  [
    'outing',
    true,
    'on skis; skis; ski; kicksled; kick sled; on the kicksled; skijor; skijoring; canicross; bikejor; bikejoring; on the bike; scooter; on foot; skiing; skied; small sled; other sled; second sled; second team; on the small sled; on the other sled; a pair; a team; a little team; out on skis; kick-sledding; kicksledding; scootering; on the scooter; on the kick-sled; on the little sled; little sled; the kick sled; on his skis; on her skis; cross country skis; by ski; behind the kick sled',
  ],
  [
    'mine',
    true,
    "mine; my team; i had; i got; i've got; i have; i ran; i drove; i took; me; i'm running; i am running; i run; my sled; with me; our team; we had; i'm driving; myself; i hooked up; i'll run; i'll take; i'll hook; i hook; i'll hook up; i hook up; i'll have; i'll drive; i'll be running; i'm hooking; i'm taking; i take; i've hooked; i've hooked up; i'll be driving; i drive; for me; in mine; my string; my dogs; my own team; we ran; we took; i'll keep; i kept; i get; i'll get; i'm getting; i'm gonna run; i'm going to run; i'm gonna take; i'm going to take",
  ],
];
