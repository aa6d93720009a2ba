/**
 * Signs of trouble on a body, how bad, and which way it goes. Ordered as trouble comes most often: lameness and sore
 * joints, feet, gut, the rest.
 */
import type { Row } from './table.ts';

export const signs: readonly Row[] = [
  [
    'sign',
    'lame',
    "lame; limp; limps; limped; limping; limpy; favor; favors; favored; favoring; favour; favours; favoured; favouring; gimpy; gimp; gimping; gimped; gimps; lameness; head bob; head bobbing; bobbing his head; bobbing her head; head bobs; bobbing; three legged; 3 legged; three leg; 3 leg; on three legs; on 3 legs; toe touching; toe touch; toe tapping; touching toes; taking short steps; takes short steps; took short steps; taking shorter steps; short striding; short strided; short stride; short strides; short stepping; short stepped; shortened stride; shortening up; short on; stepping short; not putting weight on; not putting weight; not putting any weight on; won't put weight on; wouldn't put weight on; not weight bearing; non weight bearing; not bearing weight; won't bear weight; won't bear any weight; hobbling; hobbled; hobble; hobbles; hitch in his step; hitch in her step; hitch in his gait; hitch in her gait; hitch in his stride; hitch in her stride; hopping; skipping on; holding up; carrying his; carrying her; holding up his; holding up her; uneven; hitchy; gait is off; gait off; moving funny; bad step; bad steps; off step; off steps; ouchy step; ouchy steps; funny steps; lame steps; sore steps; lame step; moving off; ginger on; gingerly; off on; stepping gingerly; unsound; not sound; dead lame; bunny hopping; nwb; not using; guarding; holding it up; carrying it; lifting his; lifting her; lifts his; lifts her; keeps lifting; holding up a; pegging; crow hopping; skipping steps; skip stepping; dragging the; not right on; not level; off in; hip hiking; short in; short up; short through; won't put weight; won't put any weight on; won't put any weight; will not put weight on; will not put weight; will not put any weight on; will not put any weight; will not bear weight; will not bear any weight; wouldn't put weight; wouldn't put any weight on; wouldn't put any weight; wouldn't bear weight; wouldn't bear any weight; would not put weight on; would not put weight; would not put any weight on; would not put any weight; would not bear weight; would not bear any weight; can't put weight on; can't put weight; can't put any weight on; can't put any weight; can't bear weight; can't bear any weight; can not put weight on; can not put weight; can not put any weight on; can not put any weight; can not bear weight; can not bear any weight; couldn't put weight on; couldn't put weight; couldn't put any weight on; couldn't put any weight; couldn't bear weight; couldn't bear any weight; could not put weight on; could not put weight; could not put any weight on; could not put any weight; could not bear weight; could not bear any weight; doesn't put weight on; doesn't put weight; doesn't put any weight on; doesn't put any weight; doesn't bear weight; doesn't bear any weight; does not put weight on; does not put weight; does not put any weight on; does not put any weight; does not bear weight; does not bear any weight; didn't put weight on; didn't put weight; didn't put any weight on; didn't put any weight; didn't bear weight; didn't bear any weight; did not put weight on; did not put weight; did not put any weight on; did not put any weight; did not bear weight; did not bear any weight; not bearing any weight; isn't bearing weight; isn't putting weight on; isn't putting any weight on; no weight on; knuckling; knuckling over; knuckled over; knuckles over; knuckle over; knuckling under; going short; went short; gone short; goes short; running short; trotting short; nodding; head nod; nodding lame; peg legged; going on three; going on three legs; packing a leg; packing a foot; packs a foot; dot and carry; gammy; walking tender; going tender; lamed up; came up lame; come up lame; pulled up lame; went lame; gone lame; going lame; turned up lame; favouring it; protecting; babying; sparing; head going up and down; head is going up and down; head goes up and down; head was going up and down; head going up; nods with every step; nodding with every step; head nods; walks funny; walking funny; walked funny; runs funny; running funny; trotting funny; moves funny; moved funny; stepping funny; funny gait; gait looks funny; walks weird; walking weird; moving weird; walking wrong; weird gait; skippy; skippy thing; skippy gait; skippy step",
  ],
  ['sign-off', 'lame', 'off'],
  [
    'sign',
    'sore',
    'sore; footsore; sores; soreness; tender; tenderness; ouchy; owie; ouch; flinch; flinches; flinched; flinching; painful; pain; pained; hurting; hurts; hurt; reactive; reacts; reacted; reacting; sensitive; aching; achy; winced; winces; wincing; yelped; yelps; yelping; reaction; ow; touchy; pulled away when; pulls away when; pulling away when; pulled away as; cried out; sensitivity; soar; whimpered; whimpers; guarded; strain; strained; sprain; sprained; pulled muscle; pulled a muscle; pulled a muscle in; strained a muscle; strained a muscle in; muscle pull; muscle strain; twisted; tweaked; wrenched; yipped; yips; yiped',
  ],
  [
    'sign',
    'stiff',
    'stiff; stiffness; stiffened; stiffening; stiffly; tight; tightness; tightened; cramp; cramps; cramping; cramped; cramped up; crampy; knotted; knot; knots; knotty; stiffened up; tightened up; stiffening up; tightening up; cramping up; stiffs up; stiffish; stove up; seized up; locked up; rigid; tying up; spasm; spasms; wooden; like a rock; hard as a rock; hard as rock; rock hard; like a board; hard as a board; like wood; like a brick; hard as a brick; like rope; like a rope; ropy; ropey; like cables; like a knot',
  ],
  [
    'sign',
    'swollen',
    'goose egg; swollen; swelling; swelled; swells; swell; puffy; puffiness; filled; filling; filled up; puffed; puffed up; swelled up; swollen up; blown up; edema; ballooned; fat; thickened; puffing up; fluid; effusion; enlarged; thick; puff; lump; bump; lumpy; engorged; eff; effused; effusive; effusions',
  ],
  [
    'sign',
    'hot',
    'hot; heat; warm; warmth; feverish to the touch; burning; hot to the touch; warm to the touch; heat in; warmer; hotter; hot spot; toasty; some warmth; a little warmth; little warmth',
  ],
  ['sign', 'bruised', 'bruised; bruise; bruises; bruising; black and blue; contusion; bruse; bruized'],
  [
    'sign',
    'bleeding',
    'bleeding; bleeds; bleed; bled; blood; bloody; blood on the snow; blood in the snow; bloodied; dripping blood; spotting blood; bleeds a little; bled a bit; oozing blood; trickle of blood; drop of blood; blood spots',
  ],
  [
    'sign',
    'infected',
    'infected; infection; oozing; oozy; ooze; pus; pussy; festering; festered; weeping; weepy; septic; goopy; goo; discharge; gunk; smells bad; abscess; abscessed; smelly; inflamed; crusty',
  ],
  [
    'sign',
    'cut',
    'cut; cuts; sliced; slice; slices; gash; gashed; gashes; lacerated; laceration; lacerations; nick; nicked; nicks; puncture; punctured; punctures; slit; slits; scratch; scratches; scratched; wound; wounds; gouge; gouged; bite wound; bite mark; stabbed; cut up; tooth mark; bitten; scrape; scrapes; scraped; bite; bites; dog bite; bite marks; bite wounds; fang mark; fang marks; hole; holes; pinhole; tooth marks; nipped; nip',
  ],
  [
    'sign',
    'split',
    'split; splits; splitting; fissure; fissures; fissured; crack; cracks; cracked; cracking; split open; splitted; cracked open; crevice; fissuring',
  ],
  [
    'sign',
    'worn',
    'worn; wearing; raw; pink; pinkish; pinking; abraded; abrasion; abrasions; rawness; worn thin; worn down; reddened; red; redness; raw spot; raw spots; pinkness; pinked up; thin skinned; rough; irritated; irritation; chapped; worn smooth; wore the skin off; worn the skin off; wears the skin off; rubbed the skin off; took the skin off; taken the skin off; scraped the skin off; peeled the skin off; skin worn off; skin rubbed off; skin is worn off; skin peeling; rubbed thin; blister; blisters; blistered; wear; scuffed; scuff; skinned; erosion; angry; pink spot; pink spots; thinning; reddish; tenderized',
  ],
  [
    'sign',
    'torn',
    'torn; tear; tears; tore; tearing; ripped; rip; rips; ripping; broken; broke; breaks; break; snapped off; ripped off; torn off; tore off; pulled off; cracked off; ripped out; missing; split off; broke off; broken off; tear in; hanging off; hanging by a thread; hanging by a string; hanging on by a thread; hanging by a shred; dangling; half off; lost; knocked off; caught; nail gone; nail is gone; toenail gone; toenail is gone; dewclaw gone; dewclaw is gone; claw gone; claw is gone',
  ],
  [
    'sign',
    'rub',
    "rubbed bare; bald patches; rub; rubs; rubbed; rubbing; rubbed raw; chafe; chafes; chafed; chafing; harness rub; harness rubs; bootie rub; bootie rubs; bootie burn; hair gone; hair loss; worn the hair off; wore the hair off; wears the hair off; wearing the hair off; rubbed the hair off; rubbing the hair off; rubs the hair off; rubbed off the hair; rubbed away the hair; rubbed the hair away; taken the hair off; took the hair off; worn the fur off; wore the fur off; rubbed the fur off; taken the fur off; took the fur off; rubbed all the hair off; hair is gone; hair's gone; fur gone; fur's gone; fur is gone; fur loss; bald spot; bald spots; bald patch; losing hair; rubbed bald; hair rubbed off; hair worn off; harness burn; harness sore; harness sores; missing hair; rub mark; rub spot; chafe mark; gall; galls; galled; hair rubbed; fur rubbed; rubbed off; hairless; rub sore; rub sores; bare patch; strap rub; collar rub; chaffed; chaffing",
  ],
  [
    'sign',
    'iced',
    'ball of ice; balls of ice; ball of snow; balls of snow; clump of ice; clumps of ice; clump of snow; clumps of snow; lump of ice; lumps of ice; lump of snow; lumps of snow; chunk of ice; chunk of snow; iced; iced up; icing; icing up; ices up; ice; ice ball; ice balls; iceball; iceballs; ice balling; snowball; snowballs; snow ball; snow balls; balled up; balling up; balling; balled; balls up; ice between; snow between; snow packed; snowballed; snowballing; ice packed; packed with snow; packed with ice; ice buildup; clumped; clumps; ice clumps; snow clumps; ball ice; caked with ice; caked; ice chunks; ice marbles; ice marble; marbles of ice; ice beads; beads of ice; ice pebbles; ice lumps; snow lumps; ice nuggets; snow marbles; pebbles of ice',
  ],
  [
    'sign',
    'frostbite',
    'nipped by the frost; nipped by frost; bitten by the frost; bitten by frost; caught by the frost; frostbite; frostbit; frostbitten; frost bite; frost bit; frost bitten; frost nip; frostnip; frostnipped; frost nipped; frost nips; frosted; nipped by the cold; frozen; frost; frostbites; frost damage; frost burn; froze; freezes',
  ],
  [
    'sign',
    'licking',
    "licking; lick; licks; licked; licking at; chewing at; chews at; chewed at; chewing on; gnawing; gnaws; gnawed; gnaw; worrying at; nibbling at; nibbles at; fussing with; fussing at; fussing over; biting at; bites at; nosing at; nursing; messing with; bothering; bothering with; going after; worrying; pulling at; won't leave alone; licks on it; licking on it; licks on; licking on; licks it; licks at it; chews on it; chewing it; nibbling it; chew; chews; chewed; chewing; nibble; nibbles; nibbled; nibbling; mouthing; mouthing at; gnaws at; gnaw at; gnawing at; gnawing on; gnaws on; nibbling on; nibbles on; nibbled at; nibbled on; licked at; lick at; lick on; licked on; obsessing over; working at; cannot leave it alone; keeps at it; worrying it; worries it; worries at it; tonguing it; tonguing; lick lick; lick lick lick; at it with her tongue; at it with his tongue",
  ],
  [
    'sign',
    'vomiting',
    'vomit; vomits; vomited; vomiting; threw up; throw up; throws up; throwing up; thrown up; puke; pukes; puked; puking; barf; barfs; barfed; barfing; upchucked; regurgitated; regurgitating; regurgitates; regurged; heaved; heaving; retching; retched; retch; lost his lunch; lost her lunch; lost his breakfast; lost her breakfast; lost his snack; lost her snack; brought up; brought it up; brought it back up; threw it up; threw it back up; threw it straight back up; threw it all up; puked it up; emesis; sick to his stomach; sick to her stomach; threw his up; threw hers up; upset stomach; came back up; came right back up; hurled; spit up; spat up; yakked; yakked up; bilious; bile; heave; dry heaving; dry heaves; been sick; was sick; got sick; coughed up bile; threw his snack up; threw her snack up; vom; throwing his food up; bring up; bringing up; brings up; vomitting; vomitted; threw everything up; threw it all back up; through up; v +',
  ],
  [
    'sign',
    'loose-stool',
    "loose; runny; watery; mushy; liquid; diarrhea; diarrhoea; the runs; had runs; has runs; loose stool; loose stools; soft stool; soft stools; squirts; the squirts; squirting; the trots; scours; the scours; watery stool; watery stools; loose poop; soft poop; loose poo; soft poo; runny poop; runny stool; runny stools; liquid stool; runny poo; stool is loose; stool's loose; stools are loose; stool is soft; stool's soft; stools loose; stool loose; stool soft; loose bowels; loose bowel; pudding poop; pudding stool; pooping water; loosey goosey; soft serve; watery poop; bowels loose; poop is loose; poop's loose; poops loose; poop loose; poop soft; poop is soft; poop's soft; poop runny; liquid poop; diarhea; diarrea; diarreah; diarrhea stool; the poops; mushy stool; mushy poop; soft s; cow pie; cow pies; the skits; the skitters; mucousy stool; stool is watery; stool watery; stool's watery; stool runny; stool was loose; stool was soft; stools were loose; stools soft; stools were soft; poop was soft; poop was loose; belly's off; gut trouble; upset gut; loose motion; runs; been loose; is loose; was loose; pooping loose; loose behind; loose at the back; a bit loose behind; had the runs; splashy; firehosing; squitters; the squits; squits; got the trots; had the trots; scouring; the skids; d +",
  ],
  [
    'sign',
    'bloody-stool',
    'bloody stool; bloody stools; blood in stool; blood in the stool; blood in his stool; blood in her stool; blood in their stool; bloody diarrhea; blood in it; blood in his poop; blood in her poop; blood in the poop; bloody poop; bloody poo; blood in poop; red in the stool; red in it; bloody runs; stool with blood; stool bloody; stool is bloody; stool was bloody; bloody squirts; blood in that; blood in the diarrhea; tarry stool; black stool; blood in his poo; blood in her poo; blood with it; blood in the poo; streaks of blood; bloody mucus; pooped blood; pooping blood; poops blood; passed blood; passing blood; crapped blood; blood when he poops; blood when she poops; blood coming out; bloody bowel movement; blood and mucus; bloody discharge from the rear; blood out the back end; pooped some blood; raspberry jam; jelly like stool',
  ],
  [
    'sign',
    'coughing',
    'cough; coughs; coughed; coughing; hack; hacks; hacked; hacking; hacking cough; kennel cough; honking; wheezing; wheeze; wheezes; wheezy; wheezed; gagging; gagged; gag; coughin; hacking away; goose honk; honked; reverse sneeze; reverse sneezing; sneezing; sneeze; sneezes; snuffling; snotty; raspy; croupy; rattly; rattle; coughy; barking cough',
  ],
  [
    'sign',
    'dark-urine',
    "dark urine; dark pee; coffee colored urine; coffee coloured urine; urine is dark; urine's dark; urine was dark; urine dark; pee is dark; pee's dark; pee was dark; pee dark; pee was like coffee; pee is like coffee; pee like coffee; pee looks like coffee; urine like coffee; urine is like coffee; urine was like coffee; urine looked like coffee; pee looked like coffee; peeing brown; peeing dark; brown urine; brown pee; tea colored urine; tea coloured urine; tea colored pee; coffee colored pee; coffee coloured pee; pee the color of coffee; urine the color of coffee; urine the color of tea; pee the color of tea; pee the color of cola; urine the color of cola; dark brown urine; red urine; red pee; pee is brown; pee's brown; pee was brown; urine is brown; urine was brown; urine's brown; peed brown; peed dark; peeing coffee; peed coffee; peeing tea; bloody urine; bloody pee; blood in urine; blood in the urine; blood in his urine; blood in her urine; blood in pee; blood in the pee; blood in his pee; blood in her pee; peeing blood; peed blood; pees blood; pissing blood; blood when peeing; cola colored urine; cola colored pee; urine looks like coffee; urine looks dark; urine looked dark; pee looked dark; pee looks dark; urine very dark; dark yellow urine; concentrated urine; pee looks brown; peeing really dark; urine is really dark; pee is really dark; pee was really dark; pee really dark; urine was really dark; wee is dark; wee was dark; dark wee; brown wee; wee is brown; peed really dark; pee is coffee colored; urine brown; pee brown; pees dark; pees brown; urine tea colored; urine coffee colored; urine cola colored; urine like tea; pee like tea; pee was like tea; pee was the color of coffee; pee was the color of tea; urine was the color of coffee; urine was the color of tea; pee is the color of coffee; pee is the color of tea; urine is the color of coffee; pee the color of strong tea; urine the color of strong tea",
  ],
  [
    'sign',
    'dehydrated',
    "dehydrated; dehydration; dehydrating; gums tacky; tacky gums; gums are tacky; gums a bit tacky; gums a little tacky; gums were tacky; gums still tacky; gums a touch tacky; gums feel tacky; gums feeling tacky; gums sticky; sticky gums; gums are sticky; gums dry; dry gums; gums are dry; gums are a bit tacky; gums are a little tacky; gums were a bit tacky; gums were a little tacky; gums slightly tacky; gums are slightly tacky; gums pretty tacky; gums are pretty tacky; gums kind of tacky; gums kinda tacky; tacky; skin tenting; skin tents; skin tented; skin tent; tenting; tented; skin's tenting; skin is tenting; skin slow to return; skin slow to go back; slow skin tent; skin stays up; skin stayed up; skin won't snap back; skin tent slow; skin doesn't snap back; skin is slow; skin slow; dry mouth; tacky mouth; turgor; sunken eyes; skin pinch; skin test slow; tents; tacky at the gums; hydration is poor; hydration poor; poor hydration; dry in the mouth; slow to snap back; skin not snapping back; skin's slow to go back; skin is slow to go back; skin's slow; a bit dry; underhydrated; dryish gums; dehyd; dehy; dried out; drying out; skin just stood there; scruff just stood there; skin stood up; skin stays tented; scruff stays up; scruff stayed up; skin is slow to snap back",
  ],
  [
    'sign',
    'overheated',
    "overheated; overheating; overheats; overheat; too hot; hot and bothered; panting hard and won't settle; panting hard and wouldn't settle; panting hard won't settle; panting hard wouldn't settle; panting and won't settle; panting and wouldn't settle; panting hard and not settling; panting hard not settling; panting hard and will not settle; won't stop panting; wouldn't stop panting; can't stop panting; not cooling down; won't cool down; wouldn't cool down; not cooling off; won't cool off; will not cool down; will not cool off; won't cool; will not cool; can't cool down; can't cool off; can not cool down; can not cool off; couldn't cool down; could not cool down; wouldn't cool off; would not cool down; would not cool off; isn't cooling down; isn't cooling off; doesn't cool down; does not cool down; didn't cool down; did not cool down; isn't cooling; not cooling; running hot; ran hot; overly hot; heat stress; heat stressed; heat stroke; heatstroke; panting like crazy; panting like mad; panting hard; panting heavily; panting heavy; panting nonstop; heavy panting; way too hot; roasting; too warm; heat exhaustion; panting really hard; panting so hard; panting and not settling; hasn't stopped panting; hyperthermic; getting hot; got hot; hot and panting; heating up; heated up",
  ],
  [
    'sign',
    'shivering',
    'shivering; shivers; shiver; shivered; shaking; shakes; shaky; trembling; trembles; trembled; shivery; quivering; hypothermic; the shakes; tremor; tremors; chilled; cold and shaking; shook the whole time; shook like a leaf; shook all over; shook the entire time; shook with cold; shook from the cold; shook all night; shook with the cold',
  ],
  [
    'sign',
    'collapsed',
    "legs out from under him; legs out from under her; legs went out from under him; legs went out from under her; legs went from under him; legs went from under her; legs gave out; legs gave way; just folded; collapsed; collapse; collapses; collapsing; went down flat; went flat down; fell flat; dropped flat; went down in a heap; fell in a heap; dropped in a heap; went down; goes down; fell over; passed out; fainted; keeled over; going down; buckled; down and can't get up; couldn't get up; can't get up; couldn't stand; can't stand; dropped in harness; fell down; gone down; flopped over; crumpled; lost his legs; lost her legs; seizure; staggering; staggered",
  ],
  [
    'sign',
    'thin',
    "thin; ribby; skinny; too thin; too lean; underweight; dropping weight; losing weight; lost weight; dropped weight; lost some weight; losing condition; lost condition; dropped some weight; bony; boney; poor condition; shedding weight; ribs showing; can feel her ribs; can feel his ribs; feel her ribs; feel his ribs; feel every rib; feel each rib; feel all his ribs; feel all her ribs; see every rib; see all his ribs; see all her ribs; count his ribs; count her ribs; count every rib; count the ribs; see the ribs; feel the ribs; hip bones; ribs sticking out; skin and bone; skin and bones; gaunt; tucked up; looking lean; leaning out; losing some weight; dropping a bit of weight; dropping some weight; lost a bit of weight; lost a little weight; losing a bit of weight; losing a little weight; weight is dropping; weight's dropping; weight loss; see her ribs; see his ribs; lost a lot of weight; ribs show; on the thin side; on the lean side; a bit light; ribs are showing; gotten thin; got thin; gone thin; getting thin; grown thin; fallen away; off in condition",
  ],
  [
    'sign',
    'in-season',
    'in heat; in season; coming into season; coming into heat; coming in heat; coming in season; into season; came into season; came into heat; went into heat; going into heat; going into season; in standing heat; standing heat; came in heat; started her heat; in full heat; started her season; her heat; her season; in estrus; on heat; coming on heat; come into heat; come into season; came in season; gone into heat; gone into season; estrus; out of heat; out of season; gone out of heat; gone out of season; done with her heat; finished her heat; through with her heat',
  ],

  // Nothing in particular, used with absent, resolved or possible
  [
    'fine',
    true,
    'fine; ok; okay; amazing; fantastic; good; clean; perfect; great; normal; healthy; clear; all right; alright; excellent; in good shape; looks good; solid; in great shape; unremarkable; wnl; nice; spotless; super; looking good; lovely; beautiful; happy; tip top; immaculate; all good; holding up; holding up well; well; good shape; nothing to report; no problem; no problems; no issues; no trouble; no complaints; no issue; a ok; nothing to see; nice and clean; unhurt; sound; uninjured; unharmed; sound as a bell; none the worse; cool; cold; flexible; loose; supple; tidy; wonderful; no worse; smooth; intact; k; symmetrical; even; pain free; sure footed; in good order; checked out fine; checked out; check out; checks out; dry; pretty good; fine and dandy; not bad; quiet; brilliant; great shape; soft and supple; neg; negative; nad; nil; in good nick; tickety boo; right as rain; perfectly fine; perfectly good; splendid; shipshape; as they should be; as it should be; just fine; in fine fettle; lovely and clean; clean as a whistle; fine as can be; good as gold; none the worse for wear; nothing doing',
  ],
  [
    'nothing',
    true,
    "nothing wrong; nothing wrong with; nothing; no problem; no problems; nothing the matter; no issues; no issue; no trouble; no complaints; no concerns; nothing to report; nothing to see; nothing there; nothing amiss; not a mark; not a mark on; not a scratch; nothing found; no injuries; no injury; no marks; no damage; can't find anything; couldn't find anything; can't see anything; couldn't see anything; don't see anything; didn't find anything; didn't see anything; can't find a thing; nothing of note; found nothing; no abnormalities; nothing bad; can't feel anything; couldn't feel anything; don't feel anything; not a thing wrong; not one thing wrong; nothing showing; nothing abnormal; no lesions; no findings; no wounds; no foot trouble; no foot problems; no foot issues; no feet trouble; no feet problems; no feet issues; no paw trouble; no paw problems; no paw issues; anything wrong; unhurt; couldn't find a thing; can't find anything wrong; couldn't find anything wrong; can't see anything wrong; couldn't see anything wrong; nothing obvious; nothing visible; no sign of anything; no sign of trouble; no sign of injury; not a thing; no visible injury; not a mark on her; not a mark on him",
  ],

  [
    'over',
    true,
    "stopped bleeding; quit bleeding; stopped coughing; quit coughing; stopped limping; quit limping; stopped vomiting; stopped throwing up; not bleeding anymore; closed; closed up; has closed; closed over; knitted; is out; are out; is all out; are all out; came out; all came out; fell out; melted out; is melted out; out now; loosened off; loosened off completely; loosened right off; worked itself out; right as rain again; healed; all healed; completely healed; healed up; healed over; all healed up; cleared up; cleared; fine now; ok now; okay now; good now; all good now; normal now; back to normal; gone now; all gone; gone today; gone; nothing to see now; nothing there now; nothing there today; nothing there this morning; nothing there at all now; nothing today; nothing this morning; today there's nothing; today there is nothing; now there's nothing; now there is nothing; this morning there's nothing; this morning there is nothing; none today; none this morning; none tonight; none now; call that over; call it over; call that healed; call it healed; call it gone; call that resolved; call it resolved; consider it healed; consider it over; call it cured; call that cured; no sign of it now; walked out of it; worked out of it; ran out of it; warmed out of it; shook it off; resolved; over it; back to herself; back to himself; good as new; right as rain; disappeared; clear now; stopped now; all clear now; not anymore; not any more; not any longer; can't find any of it; couldn't find any of it; can't find any of it now; can't see any of it now; none in it now; none in it today; none of it left; none left; nothing wrong with it now; not a thing wrong with it now; nothing wrong with him now; nothing wrong with her now; not a thing wrong with him now; not a thing wrong with her now; run clear since; run clear ever since; ran clear since; been clear since; been clear ever since; normal since; been normal since; back to normal since; back to normal since then; fine since; fine ever since; been fine since; been fine ever since; healthy again; well again; himself again; herself again; firm again; clear again; clean again; none since; nothing since; fine today; fine again; good again; ok again; quit now; quit that; quit that now; quit it; quit it now; quit since; stopped since; it quit; has quit; 's quit; have quit; settled now; let up; let up now; hasn't done it since; hasn't since; dried up now; quit on its own; stopped on its own; quits now; gone down to nothing; nearly forgotten; a thing of the past; back to his old self; back to her old self; back to his usual self; back to her usual self; back to form; bounced back; came right; come right; come good; right again; sound now; sound again; sound today; quit pretty quick; quit soon after; quit right away; quit quick; quit quickly; stopped pretty quick; stopped right away; stopped soon after; stopped after that; stopped shortly after; quit shortly after; quit once; stopped once; quit after a while; stopped after a while; stopped by itself; quit by itself; settled down now; loose now; loose as anything; loose as anything now; loose as a goose; loose again; supple again; nothing to feel; nothing to feel there; nothing to feel now; not a trace of it; no trace of it; no sign of it; no sign of it today; no sign today; you would never know; right as ninepence; right as a trivet; right as rain now; mended; all mended; all better; better now; all better now; out of heat; out of season; gone out of heat; gone out of season; done with her heat; finished her heat; through with her heat; not a peep; not a peep since; not a peep out of him; not a peep out of her; not a cough since; not a cough; not a limp since; not a sign since; not so much as a cough since; not a squeak since; not once since; clear as a bell since; sound as a bell now",
  ],
  [
    'severity',
    'mild',
    'a little; little; a touch; touch; slight; slightly; a bit; bit; bit of; barely; mild; mildly; minor; small; tiny; a hair; a tad; tad; a smidge; hint of; a hint; teeny; light; lightly; just a little; somewhat; a wee bit; wee; wee bit; faint; faintly; trace; trace of; marginally; very slight; superficial; not deep; nothing too deep; nothing deep; not bad; not too bad; not serious; nothing serious; nothing major; not severe; low grade; subtle; itty bitty; kind of; kinda; sort of; sorta; lil; hardly; quarter inch; just slightly; a whisker; smidgen; a smidgen; a mite; ever so slightly; shallow; pinprick; weeny; a shade; smallish; milldy; nothing terrible; not terrible; a fraction; a dab; just a touch; just a bit; kinda sorta',
  ],
  [
    'severity',
    'moderate',
    'pretty; fairly; moderate; moderately; noticeable; noticeably; quite; quite a; medium; rather; deep; definite; definitely; decent; decent sized; good sized; considerable; reasonably; properly; mod; distinctly; visibly; obvious; obviously; clearly; sizeable; mid; significant; clear; grade two; real; notable; notably',
  ],
  [
    'severity',
    'severe',
    "bad; badly; really; really bad; very; very deep; severe; severely; three legged; 3 legged; on three legs; on 3 legs; horrible; horribly; terrible; terribly; nasty; awful; huge; big; extremely; major; serious; seriously; wicked; super; so; real bad; dead; way; totally; completely; pouring; massive; massively; heavily; heavy; gushing; a lot; lots; nasty looking; ugly; wide open; not putting any weight on; won't bear weight; not bearing weight; not weight bearing; non weight bearing; won't put weight on; wouldn't put weight on; acute; horrid; too; extreme; incredibly; deeply; enormous; profound; marked; markedly; not putting weight on; nwb; crazy; awfully; large; quite badly; pretty bad; pretty badly; mighty; full on; won't put weight; won't put any weight on; won't put any weight; won't bear any weight; will not put weight on; will not put weight; will not put any weight on; will not put any weight; will not bear weight; will not bear any weight; wouldn't put weight; wouldn't put any weight on; wouldn't put any weight; wouldn't bear weight; wouldn't bear any weight; would not put weight on; would not put weight; would not put any weight on; would not put any weight; would not bear weight; would not bear any weight; can't put weight on; can't put weight; can't put any weight on; can't put any weight; can't bear weight; can't bear any weight; can not put weight on; can not put weight; can not put any weight on; can not put any weight; can not bear weight; can not bear any weight; couldn't put weight on; couldn't put weight; couldn't put any weight on; couldn't put any weight; couldn't bear weight; couldn't bear any weight; could not put weight on; could not put weight; could not put any weight on; could not put any weight; could not bear weight; could not bear any weight; doesn't put weight on; doesn't put weight; doesn't put any weight on; doesn't put any weight; doesn't bear weight; doesn't bear any weight; does not put weight on; does not put weight; does not put any weight on; does not put any weight; does not bear weight; does not bear any weight; didn't put weight on; didn't put weight; didn't put any weight on; didn't put any weight; didn't bear weight; didn't bear any weight; did not put weight on; did not put weight; did not put any weight on; did not put any weight; did not bear weight; did not bear any weight; not bearing any weight; isn't bearing weight; isn't putting weight on; isn't putting any weight on; no weight on",
  ],
  [
    'trend',
    'better',
    "better; improving; improved; improves; not as bad; not so bad now; on the mend; healing; healing up; mending; less; coming along; improvement; looking better; not as; n't as; not nearly as; n't nearly as; not half as; n't half as; not near as; n't near as; not quite as; n't quite as; nowhere near as; going down; down from; coming down; easing; eased; eased off; easing off; lots better; much better; closing up; less than; settling down; easier; shrinking; healing nicely; on the way out; starting to heal; turning the corner; loosening; loosening up; loosened; loosened up; drying up; knitting; recovering; subsiding; fading; drying out; warmed out of it; getting there; going away; lessening; calming down; half what it was; is down; 's down; is way down; down a lot; way down; down some; gone down; went down; down a bit; down quite a bit; going nicely; almost gone; nearly gone; mostly gone; about gone; just about gone; half gone; settling; cleaning up; clearing up; coming right; looks better; seems better; bit better; lot better; a lot better; tons better; some better; way better; healed a lot; closed up some; almost closed up; almost healed; nearly healed; knitting up; scabbing over; scabbed over; scabbing; drying; firmer; drier; cooler; looser; smaller; happier",
  ],
  [
    'trend',
    'worse',
    'worse; worsening; worsened; getting worse; not getting better; more; more than; spreading; bigger; deeper; no better; not better; not any better; deteriorating; opened up more; going downhill; flared; flared up; flaring up; flaring; stiffer; puffier; sorer; redder; rawer; hotter than; growing; opening up; wider; progressing; went backwards; going backwards; gone downhill; went downhill; redder than; bigger than; puffier than; gone worse; got worse; gets worse; worse again; worse than before; worse than yesterday; opened back up; opened up again; reopened; splitting further; getting bigger; getting deeper; more swollen; more sore',
  ],
  [
    'trend',
    'same',
    "no worse; not worse; not any worse; no worse than; still; no change; same; the same; unchanged; no different; about the same; same as; as before; still has; still got; not changed; hasn't changed; hasn't improved; not improving; stable; holding steady; no better no worse; not any bigger; n't any bigger; no bigger; not any deeper; n't any deeper; no deeper; n't any worse; n't any puffier; no puffier; n't any redder; no redder; n't any wider; no wider; n't grown; not much change; no better and no worse; neither better nor worse",
  ],
];
