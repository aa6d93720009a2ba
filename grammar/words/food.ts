/** Eating and drinking: verbs with how much was taken, foods with what they count as, words for meals. */
import type { Row } from './table.ts';

export const food: readonly Row[] = [
  // what it counts as when named
  [
    'food',
    'water',
    'water; broth; baited water; fish broth; meat broth; beef broth; chicken broth; salmon broth; bone broth; warm water; warm broth; hot broth; fish soup; soup; meat soup; snow; melt water; meltwater; bait water; flavored water; flavoured water; fish water; meat water; beef soup; cold water; warm baited water; soup water; stock; bouillon; baited broth; kibble broth; liver water; chicken soup; chicken water; milk; lukewarm water; hot water; liquid; liquids; fluids; baiting; warm soup; water with fish; tripe soup; tripe broth; liver broth; turkey broth',
  ],
  [
    'food',
    'solid',
    'fish; beef; salmon; whitefish; white fish; herring; tripe; kibble; meat; fat; chicken; chicken skins; chicken skin; turkey skins; turkey skin; biscuit; biscuits; beaver; beaver stew; beaver meat; liver; lamb; pork; turkey; sausage; sausages; hot dogs; hotdogs; hotdog; moose; caribou; reindeer; seal; bacon; lard; tallow; snacks bars; cookie; cookies; treat; treats; fish chunk; fish chunks; salmon steak; salmon steaks; salmon chunk; salmon chunks; beef fat; beef chunk; beef chunks; ground beef; ground meat; stew; mackerel; cod; smelt; char; trout; eel; sardine; sardines; fish snack; meat snack; snack bar; bone; bones; heart; beef heart; kidney; chum; sheefish; pike; horse; horse meat; rice; egg; eggs; cheese; butter; chow; dry food; dog food; poultry; chicken fat; poultry fat; frozen fish; frozen meat; frozen beef; frozen salmon; fish heads; fish head; beef strips; pollock; halibut; venison; elk; deer; rabbit; mutton; ham; suet; blubber; meatball; meatballs; tuna; jerky; burger; hamburger; horsemeat; pork belly; pork fat; lamb fat; oil; fish oil; green tripe; haddock; perch; goat; mink; otter meat; spleen; lung; beef trim; fat snack; fat snacks; fish slices; skins; chicken thighs; chicken thigh; chicken feet; duck; goose; peanut butter; bread; pancake; pancakes; cereal; oatmeal; waffle; apple; banana; carrot; meat bar; meat bars; ration; rations; dinner rolls; kibbles; dry kibble; soaked kibble; wet food; canned food',
  ],
  ['food', 'snack', 'snack; snacks; snacked; snacking; fish snacks; snak; snck; snax'],
  [
    'food',
    'meal',
    'meal; meals; supper; dinner; breakfast; breakfasts; food; bowl; bowls; dish; feed; feeding; kibble bowl; food bowl; lunch; suppers; dinners; dindin; evening meal; morning meal; evening feed; morning feed; feeds; second helping; seconds; pan; chow time; brekkie; brekky; bkfst; bfast; dish of kibble; pans; dishes; feed pan; food pan; food dish; supper bowl; supper bowls; dinner bowl; tea time; grub; portion; portions; tucker',
  ],
  ['food', 'appetite', 'appetite; appetites; app; appetit; apetite; appitite'],
  [
    'meal-time',
    true,
    'supper; dinner; breakfast; breakfasts; fed; feeding; bowl; bowls; kibble bowl; meal; meals; evening meal; brekkie; brekky; feed; lunch; bkfst; bfast; suppers; dinners; feed pan; dish; dishes; evening feed; morning feed; pan; pans',
  ],
  [
    'snack-time',
    true,
    'snack; snacked; snacks; snacking; snack stop; snack break; at the stop; on the trail; snak; snck; halfway; fire pit',
  ],

  // verbs of eating, with how much went down
  [
    'ate',
    'all',
    "ate; eat; eats; eaten; eating; ate up; ate it all; cleaned up; cleaned it up; cleaned theirs up; cleaned hers up; cleaned his up; cleans up; cleaning up; cleaned out; licked clean; licked their bowls clean; licked his bowl clean; licked her bowl clean; licked their bowl clean; licked the bowl clean; licked the bowls clean; licked it clean; bowls clean; bowl clean; bowls licked clean; polished off; polished it off; polished theirs off; polished hers off; polished his off; polished; wolfed; wolfed it; wolfed down; wolfed it down; wolfing; inhaled; inhaled it; inhales; inhaling; devoured; devoured it; demolished; hoovered; hoovered up; vacuumed; vacuumed up; gobbled; gobbled up; gobbled it; gobbled down; gobbling; finished; finished it; finished off; finish; finishes; put it away; put theirs away; put hers away; put his away; put away; scarfed; scarfed down; scarfed it; snarfed; snarfed down; chowed; chowed down; took it; took theirs; took hers; took his; took the; all gone; gone in a second; gone in seconds; gone in a flash; had his gone; had hers gone; had theirs gone; gone before; dug in; tucked in; tucked into; munched; crunched; downed; gulped; gulped down; gulped it down; had all; took all; eating well; ate well; eating great; ate great; ate good; ate everything; ate the lot; ate like a horse; ate like horses; ate like a wolf; ate like wolves; eats well; eating like a horse; dove in; dived in; bolted; bolted it; bolted down; swallowed; good appetite; great appetite; appetite good; appetite great; appetite is good; appetite's good; appetite is great; appetite fine; appetite normal; app good; app ok; app fine; app great; appetite ok; appetite excellent; app normal; app excellent; hungry; ravenous; starving; snatched; took a snack; took their snack; took her snack; took his snack; licked up; licked it up; had seconds; asked for seconds; snapped up; snapped it up; made short work; slurped up his food; back on her food; back on his food; eating normally; eating again; eating fine; eating everything; ate fine; ate normally; ate hearty; ate heartily; full appetite; emptied; emptied their bowls; emptied his bowl; emptied her bowl; emptied the bowl; went down fast; went down well; gone; hoovering; put down; crushed; crushed it; scoffed; scoffed it; scoffed the lot; nosed it all up; etten; aet; appetite's great; appetite's fine; appetites good; appetites great; appetite is fine; appetite is ok; appetite is normal; appetite was good; appetite back; appetite is back; appetite's back; back to eating; clean bowl; clean bowls; licked the pan; no leftovers; nothing left; cleaned their bowls; cleaned his bowl; cleaned her bowl; cleaned the bowl; accepted; took it fine; took snack; took snacks",
  ],
  [
    'ate',
    'most',
    'most of; ate most; ate most of; had most of; most; finished most; left a little; left a bit; nearly all; almost all; ate nearly all; three quarters; three quarters of; ate three quarters; left a few bites; the better part of; the majority; 3/4; all but a little; all but a bit; all but a few bites; left a couple bites; most down; left a quarter; all but a bite; a good bit of; two thirds; two thirds of; the bulk of; nearly finished; almost finished; nearly everything; almost everything; left some; not quite all; 3/4 of',
  ],
  [
    'ate',
    'some',
    "mouthfuls; mouthful; bites; some; some of; picked at; picks at; picking at; pick at; picked; nibbled; nibbles; nibbling; nibble; nibbled at; a few bites; few bites; a couple bites; a couple of bites; couple bites; couple of bites; two bites; three bites; one bite; a bite; a bite or two; a bite of; half; half of; ate half; left half; half eaten; half of it; left half of it; only half; ate some; a little of; a bit of; only some; a mouthful; a couple mouthfuls; a few mouthfuls; played with; pushed around; toyed with; not much; not much of; didn't eat much; did not eat much; didn't finish; did not finish; hasn't finished; wouldn't finish; won't finish; couldn't finish; slow to eat; ate slow; ate slowly; fussy; picky; a third of; a quarter of; poor appetite; appetite poor; app poor; appetite's poor; appetite is poor; appetite down; appetite so so; app so so; appetite reduced; appetite is down; appetite's down; app reduced; app down; only a little; hardly ate; barely ate; hardly ate anything; barely ate anything; hardly touched; barely touched; tasted; tasted it; left most; left most of; a few pieces; a few kibbles; ate a bit; ate a little; ate a little bit; ate part; part of; partial; ate partially; a few licks; reluctantly; app fair; appetite fair; appetite off; took a bite; took a couple; took one bite; took two bites; took a few; took a few bites; took a couple bites; took a couple of bites; had a few bites; had a couple bites; had some; left a lot; left a lot of; left over half; ate less; only ate; only ate a little; a half; mouthed; mouthed it; mouthed at; fiddled with; half hearted; half heartedly; ate without enthusiasm; appetite is so so; not all of; not all; only some of; a few chunks; left a bunch; left plenty; half his; half her; half their; half hers; half theirs; leaving half; leaving some; leaves half; leaves some; a lick; a taste; ate maybe half; appetite was poor; appetite's off; appetite is off; not eating well; not eating much; isn't eating well; isn't eating much; eating poorly; not eating great; light appetite; appetite light; two bites of; pecked at; peck at; pecking at; few bits",
  ],
  [
    'ate',
    'none',
    "refused; refuse; refuses; refusing; wouldn't touch; won't touch; didn't touch; not touching; hasn't touched; never touched; wouldn't eat; won't eat; didn't eat; not eating; isn't eating; wasn't eating; hasn't eaten; did not eat; would not eat; will not eat; doesn't want; didn't want; did not want; doesn't want it; wouldn't take; won't take; didn't take; would not take; would not touch; did not touch; wouldn't have; wouldn't have it; wouldn't have any; wouldn't look at; won't look at; wouldn't even look at; didn't even look at; didn't look at; turned up her nose; turned up his nose; turned up their noses; turned up her nose at; turned up his nose at; turned his nose up; turned her nose up; turned their noses up; turns her nose up; turns his nose up; turned nose up; turned it down; turned down; turned away; turned away from; not interested; not interested in; wasn't interested; wasn't interested in; isn't interested; isn't interested in; weren't interested; aren't interested; no interest; no interest in; showed no interest; uninterested; passed; passed on; pass; passed it up; skipped; skips; skip; skipping; blew off; blew it off; blowing off; blows off; ignored; ignored it; ignores; sniffed and walked off; sniffed it and walked off; sniffed at it and walked off; sniffed it n walked off; just sniffed; only sniffed; sniffed at; sniffed it; sniffed; snubbed; snubbing; spat out; spit out; spit it out; spat it out; dropped it; left it; left hers; left his; left theirs; left her bowl; left his bowl; off her food; off his food; off their food; off food; off her feed; off his feed; off feed; no appetite; ate nothing; ate none; had none; had nothing; took nothing; took none; nothing; none; none of; untouched; no thanks; zero appetite; appetite zero; appetite none; appetite nil; app zero; app nil; app none; walked away from; walked off from; walked away; walked off; rejected; declined; left untouched; left it untouched; left all; left all of; wanted nothing to do with; wants nothing to do with; wanted no part of; looked away; wouldn't hear of; not hungry; wasn't hungry; isn't hungry; left everything; didn't take any; ate zero; appetite gone; buried it; buried his; buried hers; buried; said no; said no thanks; looked at it and walked off; nothing eaten; not a bite; not one bite; wouldn't go near; won't go near; wouldn't eat it; stopped eating; quit eating; quit on her food; lost her appetite; lost his appetite; missed; went without; nope; didn't get; not having it; wouldn't sniff; wouldn't even sniff; turned up nose; left the bowl; left the whole; wouldn't accept; didn't eat anything; hasn't eaten anything; not eating anything; wouldn't eat anything; no dinner; no supper; no breakfast; no snack; hasn't eaten since; never ate; never touched it; zip; nada; zilch; didn't have any; couldn't be bothered; couldn't care less; couldn't care; no appetit; wouldnt; zero interest; zero interest in; nil interest; showed zero interest; not a lick of interest; no to; said no to; nope to; not a nibble; never looked at; no appetite for; would not look at; snubbed his; snubbed hers",
  ],

  // verbs of drinking
  [
    'drank',
    'all',
    'drank; drink; drinks; drinking; drunk; drank well; drinks well; drinking well; drank up; drank it up; drank it down; drank it right down; drank right down; drank down; drank it all; drank all; lapped; lapped up; lapped it up; lapped his up; lapped hers up; lapped theirs up; laps up; lapping; lapping up; slurped; slurped up; slurped it; slurped down; good drink; a good drink; big drink; a big drink; long drink; a long drink; had a drink; had a good drink; took a drink; took a good drink; drank good; drank great; drank plenty; drank lots; drank a lot; tanked up; guzzled; guzzling; dipping snow; dipped snow; dip snow; dips snow; eating snow; ate snow; grabbing snow; biting snow; scooping snow; dipping; dipped; watered; watering; hydrated; hydrating; drank deep; chugged; chugged it; drained; drained it; drank like a fish; drank like fish; emptied her water; emptied his water; dips; drank fine; drank normally; dip; snow dipping; biting the snow; eating the snow; lapped it right up; lapped right up; snow eating; well watered; thirsty; drank everything; drank the lot; drinking fine; drinking good; drank really well; drank very well; sucked down; sucked it down; sucking down; drnk; drinking plenty; drinking lots; soaked it up; downing; drank hers; grabbed snow; grab snow; grabs snow; mouthfuls of snow; mouthful of snow; biting at the snow; munching snow; munched snow; licked snow; licking snow; drunken; knocked it back; knocked back; drank every drop; drank it to the bottom; drank to the bottom; drank the bowl dry; drank it dry; sucked it up; lapped up every drop; drank his fill; drank her fill; drank their fill; every drop; put away; drank it to the last drop; went through a bowl of water',
  ],
  ['drank', 'most', 'drank most; drank most of; drank nearly all; drank almost all'],
  [
    'drank',
    'some',
    "sipped; sip; sips; sipping; a sip; a few sips; two sips; few sips; couple sips; a couple sips; a couple of sips; one sip; drank some; drank a little; drank a bit; drank half; just a sip; only sipped; a few laps; few laps; couple laps; a couple of laps; a couple laps; took a sip; took a few laps; had a sip; had a few laps; some water; a little water; a bit of water; drank a little bit; drinking a little; drinking a bit; not drinking much; didn't drink much; isn't drinking much; hardly drank; barely drank; not drinking well; drank poorly; wet her tongue; wet his tongue; swallow; a swallow; a couple swallows; a few swallows; hardly any water; drank only a little; didn't drink well; isn't drinking well; drank not much; lapped a little; lapped a bit; lapped at; sipped at; a lap or two; dipped her tongue; dipped his tongue; just dipped her tongue; just dipped his tongue; dipped a tongue; took a lick of water; a lap or so; a couple licks; barely wet her lips; barely wet his lips; wet her lips; wet his lips; wet her whistle; wet his whistle; sampled; touched it",
  ],
  [
    'drank',
    'none',
    "wouldn't drink; won't drink; didn't drink; not drinking; isn't drinking; wasn't drinking; refused to drink; hasn't drunk; hasn't drank; did not drink; would not drink; will not drink; refused water; refusing water; refusing to drink; no water; never drank; refuses to drink; hasn't had a drink; aren't drinking; weren't drinking; didn't drink any; wouldn't drink any; wouldn't lap; stopped drinking; quit drinking; didn't drink anything; off water; drank nothing; wouldn't dip; not dipping; drank none; couldn't drink; no drink; wouldn't drink it; hardly drinking",
  ],

  // giving, taken when nothing else is said
  [
    'gave',
    true,
    'gave; give; gives; given; giving; got; get; gets; getting; fed; feed; feeding; threw; tossed; handed; handed out; snacked; snacking; snack; watered; served; offered; offer; offering; dished out; passed out; dished; had; have; has; passed around; hand out; toss; throw; treated; rewarded; topped up; doled out; offered up; dropped; poured; ladled; dished up; snacks; fed out; baited; bait; tossing; served up; slipped; got their; handing out; tossed out',
  ],
  ['per-dog', true, 'each; apiece; per dog; a piece; a dog; to each; per; ea; a head; per head'],
  ['well', true, 'well; good; great; fine; nicely; like a champ'],
];
