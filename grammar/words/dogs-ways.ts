/** How a dog went: attitude and gait; gear; measures taken from a dog. */
import type { Row } from './table.ts';

export const ways: readonly Row[] = [
  [
    'manner',
    'eager',
    "eager; barking; barking to go; screaming; screaming to go; screamed; screams; fired up; all fired up; banging; banging the line; banging the lines; banging on the line; banged; slamming; slamming the line; slamming into harness; slamming in harness; raring to go; rarin to go; rearing to go; jumping; lunging; leaping; hyped; hyped up; amped; amped up; wild to go; crazy to go; nuts to go; keen; can't wait; couldn't wait; ready to go; ready to rock; ready to roll; itching to go; howling to go; yelling to go; pumped; pumped up; excited; wound up; chomping at the bit; champing at the bit; bouncing; lit up; going nuts; going crazy; going bananas; hammering the line; hammering his tug; hammering her tug; yowling; wanting to go; wants to go; wanted to go; loud; bonkers; going bonkers; jazzed; full of beans; dying to go; enthusiastic; keen to go; up for more; wanting more; wanted more; wants more; anxious to go; harness banging; harness slamming; jumping up and down; mad to go; revved up; revved; rocking the sled; antsy; yipping to go; yapping to go; leaping in harness; begging to go; bursting to go; eager to go; hot to trot; barking their heads off; barking his head off; barking her head off; screaming his head off; screaming her head off; screaming their heads off; yammering; yodeling; full of it; stoked; jacked up; ecstatic; desperate to go; ready for more; lunging in harness; impatient; barking up a storm; hitting the line; hit the line; slammed the line; jumping at the line; jumping in harness; banging his tug; banging her tug; up on his toes; up on her toes",
  ],
  [
    'manner',
    'strong',
    "strong; pulling hard; pulls hard; pulled hard; pull hard; pulling like; pulled like; pulling well; pulled well; pulling strong; pulled strong; tight tug; tight tugs; tug tight; tugs tight; tug's tight; tugs are tight; tug is tight; tug was tight; tugs were tight; tug's been tight; powerhouse; powerhouses; a beast; hauling; hauled; driving hard; driving; leaning into it; leaning into the harness; leaning in; working hard; worked hard; workhorse; a workhorse; never let up; never slacked; never slacked off; digging; dug deep; digging in; pulling his heart out; pulling her heart out; pulling their hearts out; pulling more than; pulling his weight; pulling her weight; pulled his weight; pulled her weight; a machine; a train; like a tractor; like a truck; like a train; like a freight train; a tank; a rock star; crushing it; on fire; powering; powered; powerful; grinding away; pulling the whole way; kept pulling; never stopped pulling; pulled the whole way; just kept pulling; pulled his heart out; pulled her heart out; a monster; hard working; pulling steady; pulling steadily; pulled steady; always pulling; tight line; tight lines; line tight; lines tight; tight in the tug; tight on the tug; tight as a drum; head down and pulling; pulling great; pulled great; pulling nicely; keeps a tight tug; kept a tight tug; with a tight tug; nice tight tug; nice tight tugs; leaned into it; dug in and pulled; like a mule; a mule; pulling real hard; pulling really hard; pulled really hard; pulled real hard; pulls well; pulling good; pulled good; pulling so hard; pulling super hard; pulling very hard; pulls like; tug never went slack; tug taut; taut tug; tugs taut; taut tugs; tug line tight; tugline tight; tuglines tight; tug lines tight; tug lines are tight; tuglines are tight; tugline is tight; tug line is tight; pullin hard; muscling; towing; dragging the whole team; full power; all power; put his shoulder into it; put her shoulder into it",
  ],
  [
    'manner',
    'good',
    'good; great; happy; solid; steady; ran well; ran great; ran good; running well; running great; running good; did great; did well; did good; doing great; doing well; doing fine; doing good; did fine; did awesome; doing awesome; did amazing; looked good; looked great; looking good; looking great; looks good; looks great; look good; look great; wagging; tails up; tail up; tails wagging; tail wagging; bright; bright eyed; perky; cheerful; a star; star of the day; a champ; a dream; flawless; excellent; awesome; superb; perfect; fantastic; amazing; wonderful; brilliant; fine; ran fine; ok; in good spirits; good spirits; great spirits; in great spirits; honest; reliable; rock steady; rock solid; steady as a rock; cruising; smooth; held it together; focused; content; relaxed; comfortable; settled right in; settled in; having fun; had fun; having a great time; having a good time; loved it; loving it; loves it; proud; ran beautifully; ran perfectly; ran nice; ran nicely; went well; going well; went great; going great; did beautifully; did nicely; was a champ; like pros; like a pro; superstar; in fine form; good form; well behaved; good attitude; great attitude; attitude good; attitude great; att good; good energy; great energy; recovered well; spirits high; high spirits; spirits good; spirits are good; all smiles; smiling; fresh; looked fresh; looking fresh; looks fresh; strong finish; jolly; upbeat; lively; did a great job; did a good job; doing a great job; doing a good job; great job; good job; was good; were good; was great; were great; a rockstar; held his own; held her own; listened well; steady eddie; nailed it; led well; leading well; leads well; led beautifully; led great; did really well; ran really well; doing really well; did so well; did very well; ran very well; ran super; did super; trucking along; handled it well; handled it; kept up; happy as clams; happy as a clam; pleased with himself; pleased with herself; pleased with themselves; held the line; nice and steady; performed well; working well; worked well; works well; coming along; leading great; a pro; on form; sharp; sensible; calm and steady',
  ],
  [
    'manner',
    'slack',
    "slack; slack tug; slack tugs; slack tugline; slack line; slack lines; tug slack; tugs slack; tug's slack; tug is slack; tugs are slack; tug was slack; slacking; slacking off; slacked off; slacked; not pulling; isn't pulling; wasn't pulling; aren't pulling; weren't pulling; not pulling much; hardly pulling; barely pulling; loafing; loafed; loaf; coasting; coasted; coasts; neutral; on neutral; in neutral; half slack; tug loose; loose tug; loose tugs; lazy; lollygagging; cruising on a slack tug; sandbagging; slacker; not working; isn't working; just along for the ride; along for the ride; not doing much; phoning it in; tug line slack; tugline slack; tuglines slack; not leaning; not keeping his tug tight; not keeping her tug tight; dogging it; tug hanging; line slack; tug's loose; tug is loose; faking it; shirking; wasn't pulling much; isn't pulling much; didn't pull; doesn't pull; won't pull; wouldn't pull; stopped pulling; quit pulling; tug drooping; drooping tug; tug sagging; let his tug go slack; letting his tug go slack; keeping a slack tug; goofing off; tourist; sightseeing; hitchhiking; a passenger; tug on and off; on and off tug; off and on tug; not driving; floating; dawdling; not contributing; lagging behind; trailing",
  ],
  [
    'manner',
    'tired',
    "tired; tires; tiring; flat; tail down; tails down; head down; heads down; dragging; drags; dragged; worn out; wore out; low energy; exhausted; beat; pooped; bushed; whipped; fading; faded; flagging; out of gas; gassed; running out of steam; out of steam; lethargic; dull; spent; sluggish; weary; fatigued; fatigue; done in; cooked; burned out; burnt out; dead tired; dog tired; lackluster; no energy; no spark; not himself; not herself; subdued; quiet; low; wiped; wiped out; wrung out; knackered; shattered; dead on his feet; dead on her feet; dead on their feet; running on empty; no gas; shot; tuckered; tuckered out; pooped out; drained; slowing down; slowed down; losing steam; ran out of gas; out of juice; no juice; weak; deflated; droopy; drooping; mopey; glum; off colour; off color; listless; all in; ready for a rest; plodding; asleep on her feet; asleep on his feet; lost his spark; lost her spark; no go; no zip; blah; hangdog; hit the wall; hitting the wall; bonked; bonking; toast; flat as a pancake; pretty flat; a bit flat; really flat; going flat; gone flat; went flat; heavy legged; lagging; slow to get up; ran flat; lifeless; down in the dumps; down; energy low; energy's low; energy is low; depressed; not all there; running flat; down today; run down; puffed; lacking energy; sleepy; tail low; tail dropped; dropped tail",
  ],
  [
    'manner',
    'nervous',
    'nervous; spooky; spooked; spooking; stressed; stressing; stressed out; scared; anxious; afraid; frightened; skittish; jumpy; worried; timid; shy; uneasy; uncertain; unsure; freaked; freaked out; freaking out; panicky; panicked; panicking; panic; tense; looking over her shoulder; looking over his shoulder; looking back; shied; shying; shies; spooks; rattled; intimidated; on edge; twitchy; wary; cautious; jittery; scary; startled; cowering; cowered; cringing; tucked tail; tail tucked; tail between; hesitant; not sure; overwhelmed; fretful; fretting; unsettled; terrified; scaredy; a nervous wreck; nervy; frazzled; fearful; insecure; mentally tired; head case; weirded out; not happy about; unhappy about; spookey; stress; unnerved; balked at the noise; edgy',
  ],
  [
    'manner',
    'balky',
    "balky; balked; balk; balks; balking; stopped dead; refused to go; refuses to go; refusing to go; refused to go any further; refused to go on; refusing to go on; won't go; wouldn't go; would not go; will not go; sat down; sits down; sitting down; quit; quits; quit on me; quitting; quit on us; turned the team around; turned the team; turned us around; turned around on me; spun the team; spun around; spun us around; wouldn't budge; won't budge; refused to budge; wouldn't move; won't move; refused to move; laid down; lay down; lies down; lying down; laying down; wouldn't take a; refused the; stopped and wouldn't; planted her feet; planted his feet; put on the brakes; dug his heels in; dug her heels in; dug in his heels; dug in her heels; wouldn't leave; won't lead; wouldn't lead; refused to lead; refuses to lead; refused to run; won't run; wouldn't run; refused to cross; wouldn't cross; won't cross; refused to leave; balled up the team; tried to turn around; trying to turn around; kept turning around; keeps turning around; stalled; stalled out; went on strike; on strike; flat out refused; stopped on me; stopped the team; stops dead; refused point blank; refused to take; refused to start; wouldn't start; won't start; wouldn't step; turned back; tried to turn back; turned tail; turning the team around; turned the whole team around; turns the team around; wouldn't go on; wouldn't go forward; wouldn't go any further; wouldn't go near; had to be dragged; stubborn; mutiny; shut down; sat and wouldn't; wheeled the team around; swung the team around; planted himself; planted herself; wouldn't get up; won't get up; refused to get up; refused to pull; lay down on me; laid down on me; flopped down; refused to continue; wouldn't continue; refused to go near; gave up; gives up; giving up; bolted for home",
  ],
  [
    'manner',
    'quarrelsome',
    'got into a scrap; got in a scrap; got into a fight; got in a fight; had a scrap; had a spat; had a fight; having a go at; got in a tussle; got into a tussle; got into a spat; quarrelsome; quarreling; quarrelling; fighting; fought; fight; fights; scrapping; scrapped; scrap; snapping; snapped at; snaps at; snaps; snapping at; growling; growled; growls; growl; growly; grumpy; grumping; grouchy; crabby; snarky; snarling; snarled; snarls; snarly; bickering; bickered; bicker; squabbling; squabbled; squabble; squabbles; in a mood; scrappy; aggressive; picking fights; picked a fight; picking a fight; tussle; tussled; tussling; cranky; at it; at each other; going at it; went at it; went after; had a go at; nasty; bitchy; feisty; dust up; brawl; brawling; brawled; got into it; getting into it; in a fight; in a scrap; rowed; sniping; sniping at; bullying; bullied; bully; lip curling; curled his lip; curled her lip; picking on; picked on; fighty; grumbling; grumbled; grumbles; lunged at; lunging at; bit at; bites at; beating up on; testy; ornery; snippy; snapped; grumbly; tiff; in a bad mood; in a foul mood; lit into; jumped on; pushing around; harassing; hassling; mean; bared his teeth; bared her teeth; showing teeth; showed teeth; at each others throats; having words; had words; raised hackles; hackles up; wrestling; bossy; pinned',
  ],
  ['gait', 'walk', 'walk; walking; walked; walks; down to a walk; at a walk'],
  ['gait', 'trot', 'trot; trotting; trotted; trots; trotter; at a trot; jogging; trotts; nice trot'],
  [
    'gait',
    'lope',
    'lope; loping; loped; lopes; gallop; galloping; galloped; gallops; canter; cantering; cantered; at a lope; galoping; all out gallop; running flat out',
  ],
  ['gait', 'pace', 'pace; pacing; paced; paces; pacer; paceing; pacy'],

  [
    'item',
    true,
    'harness; harnesses; tugline; tuglines; tug line; tug lines; tug; neckline; necklines; neck line; neck lines; gangline; ganglines; gang line; gang lines; mainline; main line; snap; snaps; brass snap; bronze snap; carabiner; carabiners; collar; collars; bungee; bungees; snub line; snubline; snub rope; snow hook; snowhook; hook; runner; runners; runner plastic; runner plastics; plastics; plastic; brake; brakes; brake bar; drag; drag mat; drag brake; handlebar; handle bar; handlebow; driving bow; driver bow; brush bow; brushbow; stanchion; stanchions; sled bag; sledbag; sled; headlamp; head lamp; cooker; coats; coat; jacket; jackets; picket; picket line; stakeout; stake out chain; dropper; droppers; swivel; toggle; toggles; webbing; line; lines; section; lead section; wheel section; swing section; team section; bridle; quick release; panic snap; cooler; bowl strap; neck snap; tug snap; shock cord; basket; slat; slats; footboard; footboards; runner shoe; chain; sleeping bag; stove; double neckline; double neck line; leader neckline; picket chain; drop chain; wheel tug; runner bolt; bolt; crosspiece; shackle; cable; gangline section; rope; tow line; towline; ski; skis; ski pole; pole; belt; sled runner; trace; traces; zipper; buckle; strap; straps; clip; gps; thermometer; thermos; axe; ax; knife; ring; o ring; d ring; brake claw; claw brake; track; heat wrap; dog jacket; dog coat; wrist wrap; dog bag; windshield; whistle; loop; bag zipper; four wheeler; quad; atv; tire; light; batteries; battery; leash; lead line; leadline; parka; sled bow; bow; lantern',
  ],
  [
    'gear-state',
    'broken',
    "broke; broken; breaks; break; snapped; busted; bust; failed; let go; gave out; gave way; cracked; bent; pulled apart; came apart; blew out; sheared; parted; popped; tore; torn; ripped; in pieces; split; gone bad; came undone; came loose; shot; dead; jammed; stuck; frozen up; won't close; won't latch; quit working; died; not working; stopped working; went bad; came off; finally let go; fell apart; tore out; ripped out; wrecked; trashed; pulled out; pulled loose; crushed; smashed; doesn't work; won't work; loose; ripping; blown; blew; tearing; coming apart; lost its spring; buggered; kaput; wouldn't latch; wouldn't close; quit; burst; sprung",
  ],
  [
    'gear-state',
    'chewed',
    'chewed; chew; chews; chewing; chewed through; chewed up; ate; eaten; gnawed; gnawed through; chewed right through; bit through; chomped; chomped through; eating; eats; chewing through; chewing on; chewed on; chewed off; shredded; chewed thru; gnawing; nibbled; nibbled through; bitten through; ate through; severed; chewed clean through; half chewed; mangled; snacked on; chewed halfway through; bit clean through; cut through with her teeth; cut through with his teeth',
  ],
  [
    'gear-state',
    'lost',
    "lost; lose; losing; missing; gone; fell off; dropped; disappeared; left behind; vanished; went missing; bounced out; fell out; lost off; can't find; gone missing; left; misplaced; forgot; shed; slipped; threw; flew off; forgotten",
  ],
  [
    'gear-state',
    'tangled',
    'tangled; tangle; tangles; tangling; tangled up; in a knot; knotted; twisted; twisted up; wrapped up; wrapped around; balled up; a mess; in a mess; in a tangle; in a ball; in a snarl; snarled; wound up in; caught up; a big ball; over the line; over the gangline; over the tug; under the line; stepped over; caught in; wrapped; hung up; knotted up; snagged; a rats nest; big ball; bunched up; hooked up wrong; fouled; in a big knot; in knots; a knot',
  ],
  [
    'gear-state',
    'worn',
    'worn; wearing; frayed; fraying; wearing thin; wore; worn thin; worn out; getting thin; thin; about done; going; on its last legs; fuzzy; wearing through; worn through; worn down; about shot; getting worn; weak; stretched; stretched out; threadbare; nearly through; almost through; half through; chafed; about worn; starting to fray; starting to go; on the way out; past it; wore out; wore thin; coming to the end; dull; tired; grooved',
  ],
  [
    'gear-state',
    'replaced',
    'replaced; replace; replaces; replacing; new one on; new one; swapped; swapped out; swapped in; fresh; new; put a new; put a new one on; put a spare on; changed; changed out; replaced it; spare on; fitted new; put on a new; put a fresh; new one in; mended; switched out; spare; fixed; repaired; spliced; patched; sewed; stitched; tied up; re tied; traded out; changed over to; put new; put on new; sewn; sewed up; knotted back; spliced in; a new; put in a new; new ones on; put a new one in; put another; another one on; put on a spare',
  ],

  [
    'quantity',
    'weight',
    'weighed; weighs; weigh; weight; wt; weighed in; weighs in; weighing; weighed in at; weighs in at; weigh in; weigh ins; weights; wts; on the scale; wgt; scale says; scale; tipped the scale at; tips the scale at; up to; down to; tipped the scales at; way; wayed; bodyweight; body weight; weighing in',
  ],
  [
    'quantity',
    'body-condition',
    'body condition; body condition score; bcs; condition; condition score; body score; on condition; bc; on body condition; b c s; bcs is; body condition scores; on the nine point chart; on the chart; condition wise; out of nine; out of 9; scored; score; of nine',
  ],
  [
    'quantity',
    'temperature',
    'thermometer; temp; temps; temperature; t; rectal temp; rectal; body temp; tmp; temped; rectal temperature; body temperature; temped at; temping; temps at; took temps; temperatures',
  ],
  [
    'quantity',
    'heart-rate',
    'heart rate; hr; pulse; heartrate; heart; bpm; beats a minute; beats per minute; resting heart rate; beats; resting hr; pulse rate; resting pulse; hrs; heart rates; heart beat; heartbeat',
  ],
];
