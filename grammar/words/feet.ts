/** Booties, and what is done about a finding. */
import type { Row } from './table.ts';

export const feet: readonly Row[] = [
  [
    'bootie',
    true,
    'bootie; booties; booty; boot; boots; bootys; botties; bootees; bootee; bty; bties; shoes; shoe; dog boot; dog boots; footwear; bootied; bootied up; boote; slipper; slippers; snow shoes; buddies; beauties; boody; bootie up',
  ],
  [
    'boot-verb',
    'on',
    'boot; booted; booting; boots; bootied; booted up; boot up; booting up; bootied up; bootie up; rebooted; re booted; booty; put booties; bootie; bootieing; bootying; re boot',
  ],
  [
    'boot-state',
    'on',
    "on; put on; put; wearing; wears; in; gets; got; needs; need; has; have; had; with; slipped on; slipped; popped; strapped on; all on; snugged; velcroed; getting; get; putting; wear; threw on; slapped; slap; slid on; stuck; added; running in; ran in; fitted; put back on; back on; put another on; put another one on; another one on; put another one back on; put one back on; slipped another one on; slipped another on; stuck another one on; stuck another on; went on; going on; used; use; stayed on; still on; applied; keep; keeping; kept; gave; give; running with; 's got; dressed",
  ],
  [
    'boot-state',
    'off',
    "off; took off; take off; taking off; taken off; pulled; pulled off; pulling; removed; remove; stripped; stripping; strip; peeled; peeled off; took them off; came off; taking them off; without; bare foot; barefoot; barefooted; took em off; took em all off; took them all off; pulled em; pulled them; bootless; going bare; didn't bother with; did not bother with; didn't bother; skipped; skipped the; skipping the; off to let; off to dry; off to air; off to give; off to save; off to look; off to check; off for the night; off for the day; off for now; off for a bit; off for a while; off for the break; off for the rest; all off; took; take; pull; unbooted; undid; no",
  ],
  [
    'boot-state',
    'lost',
    'lost; lose; loses; losing; missing; gone; threw; thrown; throwing; kicked off; flung; flung off; shed; short; flipped off; fell off; dropped; shucked; threw off; kicks off; kicking off; disappeared; vanished; slipped off; slid off; gone altogether; left behind; spat out; shook off; flew off; tossed; kicked; down a; minus; come off; fallen off; popped off; gone missing; without a; flinging; losing them; hanging off; mislaid; mislays; gone walkabout; went missing; lost track of; come adrift; came adrift; went flying; sailed off; thrown off; has thrown; gone astray; walked out of; walked right out of; ran right out of; stepped right out of; walked straight out of; walked clean out of; ran out of a; stepped out of; slung; pitched; chucked; shook loose; worked off; pulled free',
  ],
  [
    'boot-state',
    'torn',
    'torn; tore; through at the; through at; is through; are through; was through; ripped; rip; shredded; shred; blown; blew; blown out; blown through; blew through; blew out; wore; worn; wore through; worn through; worn out; wore out; wearing through; hole in; holes in; hole; holes; holed; trashed; chewed through; chewed up; ruined; destroyed; split; cut; cut up; busted; busted through; shot; in rags; in tatters; tattered; wrecked; through; tear; going through; went through; punctured; burst; chewed; bit through; ate through; wearing out; wearing thin; wore clean through; worn clean through; ripped through; done for; toast; finished; in shreds; broke through; burned through; worn right through; wore right through; blew a; popped a toe through; ripped to shreds; torn to shreds; ripped to bits; ripped clean through; torn clean through; torn through; ripped wide open; worn to threads; in ribbons; torn up; ripped up; chewed to bits',
  ],
  [
    'boot-state',
    'changed',
    'changed; change; changing; swapped; swapped out; swap; swapping; replaced; replace; replacing; fresh; fresh ones; new; new one; new ones; new one on; new ones on; redid; redone; redo; redoing; switched; fresh booties; exchanged; swapped for; traded; new set; fresh set; put new ones on; fresh one; changed out; rebooted; renewed; put a new one on; put on new ones; put on a new one; got a new one; new bootie; spare; put fresh ones on; changed the whole set; changed the set; changed the lot; whole new set; all new ones; changed them all; changed all of them; changed all four; swapped the set; swapped the lot; swapped all of them; a whole new set; new booties all round; new booties all around',
  ],

  [
    'act',
    'massaged',
    'massaged; massage; massages; massaging; massaged it; rubbed; rubbed down; rub down; rubdown; rub; rubbing; rubs; kneaded; kneading; worked on; working on; worked over; worked out; rubbed out; massge; worked; work on; gave a rub; loosened; loosened up; rubbed her down; rubbed him down; worked it; rolled out',
  ],
  [
    'act',
    'wrapped',
    'wrapped; wrap; wraps; wrapping; bandaged; bandage; bandages; bandaging; wrapped up; wrapped it up; vet wrapped; vet wrap; vetwrap; taped; tape; taping; splinted; dressed; dressing; neoprene wrap; wrist wrap; wrist wraps; shoulder jacket; taped up; rewrapped; re wrapped; neoprene sleeve; sleeve; brace; splint; strapped; gauze; gauzed; bound; bound up; compression wrap; padded; glued; super glued; superglued; stapled; stitched; stitches; sutured; glue; super glue; skin glue',
  ],
  [
    'act',
    'ointment',
    'ointment; salve; salved; balm; balmed; cream; creamed; zinc; zinc oxide; zinc cream; zinc ointment; petroleum jelly; petroleum; jelly; foot balm; pink salve; green salve; paw wax; foot wax; wax; greased; grease; goop; goo; gooped; pink goo; foot ointment; liniment; lanolin; udder balm; bag balm; antiseptic cream; antibiotic cream; antibiotic ointment; smeared; smear; dab; dabbed; slathered; slather; rubbed in; honey cream; honey; paste; foot cream; foot paste; pink stuff; salving; foot goop; lotion; gel; rub on; oil; coconut oil; tallow; foot salve; purple stuff; iodine ointment; anointed; oiled; diaper cream; liniment rub; balming; creme; smeared on; udder cream; paw balm; pad balm; pad wax; zinc salve; zinc paste; zink; salv; balms; dabbed on; slicked; vaseline; wound cream; wound gel; wound salve; wound powder; styptic; styptic powder; aloe; pine tar; tar; daub; daubed; daubed on; painted on; plastered; plastered on; rubbed on; worked in; smeared some; greasy stuff; bear grease; goose grease; lard on; foot oil; paw cream; paw salve; petrolatum; beeswax; sulfa; antibiotic salve; blue goo; green goo; purple goo; a dollop',
  ],
  [
    'act',
    'stretched',
    'stretched; stretch; stretches; stretching; stretched out; range of motion; flexed; extended it; rom; flexing; stretched it',
  ],
  [
    'act',
    'warmed',
    'warmed; warm up; warm him; warm her; warmed up; warming; warmed it; hot pack; heat pack; heating pad; hot water bottle; warm compress; hand warmer; hand warmers; hot compress; jacket on; coat on; put a coat; put a jacket; put coats; put jackets; coated; dog coat; dog jacket; blanketed; blanket; jacketed; fox tail; fleece; heat wrap; thawed; thaw; coats on; jackets on; put his coat on; put her coat on; put her jacket on; put his jacket on; in a coat; in a jacket; in their jackets; in their coats; warming up; bundled; belly wrap; in her jacket; in his jacket; in his coat; in her coat; a jacket; a coat; warms',
  ],
  [
    'act',
    'cooled',
    'cooled; cool; cooling; cooled down; cool down; cooled off; cool off; iced it; packed in snow; packed with snow; packed snow; pack snow; packed; icing it; ice pack; cold pack; snow pack; snow packed; packing; cooling down; cooling off; cold compress; icing; iced; ice; rolled in the snow; snow on; packed it in snow; pack; packs; packing it; ice packed; cools; snow packs; cold water; ice bath; soaked in cold; iced down; ice on; stuffed snow; stuffing snow; piled snow; put snow; threw snow; shoveled snow; shovelled snow; held snow; holding snow; rubbed snow; packing snow; packed some snow; some snow on; snow under; snow packed around; sponged; sponged down; doused; wet her down; wet him down; wetted down; hosed down; rolled her in the snow; rolled him in the snow; let him lie in the snow; let her lie in the snow; laid him in the snow; laid her in the snow; cold pads; cooling pad; snow bath; snow on his; snow on her; dunked; stood in the creek; snowed',
  ],
  [
    'act',
    'cleaned',
    'cleaned; clean; cleaning; cleaned out; cleaned up; cleaned it; flushed; flush; flushing; washed; wash; washing; rinsed; rinse; rinsing; disinfected; disinfect; picked out; picked; cleared out; soaked; soak; soaking; scrubbed; wiped; wiped down; irrigated; dug out; pulled out; broke out; picked clean; washed out; cleared; cleaned off; sterilized; peroxide; iodine; betadine; saline; chlorhexidine; chlorhex; antiseptic wash; epsom salts; epsom; hosed; hosed off; soaks; popped out; melted out; melted; bit out; scraped out; swabbed; bathed; bath; douched; cleared the ice; deiced; de iced; dug; knocked out; chipped out; bathe; bathes; bathing; sponged it; sponge; sponged off; dabbed clean; wiped clean; washed off; washed it; rinsed it; rinsed off; cleaned them; picked them clean; hosed it; flushed it; flushed out; irrigate; debrided; debride; swab; swabs',
  ],
  [
    'act',
    'medicated',
    'medicated; meds; medication; medicine; med; wormed; dewormed; worm pill; wormer; dewormer; worming; antibiotic; antibiotics; anti inflam; anti inflammatory; anti inflams; anti inflammatories; painkiller; pain killer; painkillers; pain meds; pain med; nsaid; nsaids; pill; pills; tablet; tablets; kaolin; kaolin paste; stomach paste; belly paste; tummy paste; ulcer paste; stomach medicine; stomach meds; stomach pill; stomach tablet; ulcer medicine; ulcer meds; antacid; antacids; probiotic; probiotics; probiotic paste; electrolytes; injection; injected; shot; shots; vaccinated; vaccination; vaccine; dosed; dose; doses; imodium; pepto; metronidazole; flagyl; famotidine; pepcid; fluids; sub q fluids; subq; iv fluids; eye drops; drops; ear drops; rabies shot; aspirin; steroid; steroids; treated; vitamin; vitamins; antihistamine; deworming; sucralfate; omeprazole; carprofen; meloxicam; cough syrup; syrup; charcoal; electrolyte; supplement; supplements; course of antibiotics; anti diarrheal; antidiarrheal; anti nausea; glucosamine; worm tablet; worm tablets; worm pills; worm paste; deworming paste; gut paste; stool paste; flea drops; metro; prednisone; prednisolone; pred; tramadol; gabapentin; amoxicillin; amoxi; amox; doxycycline; doxy; cephalexin; loperamide; bismuth; firocoxib; ketoprofen; ivermectin; fenbendazole; pyrantel; tylosin; cerenia; maropitant; ondansetron; antispasmodic; fluids under the skin; subcutaneous fluids; her meds; his meds; her pill; his pill; her tablet; his tablet; her drops; his drops; a painkiller; a pain killer; glucose; slippery elm; pumpkin; calcium; salt tablets; b12; iron shot; cortisone; arnica tablets; herbal paste; digestive paste',
  ],
  [
    'act',
    'checked',
    'checked; check; checking; checks; looked at; look at; had a look at; looked over; inspected; examined; went over; gone over; felt; palpated; going over; looking at; looked; chkd; chk; examine; inspect; took a look at; had the vet look at; looked him over; looked her over; felt for; ran my hands over; ran my hands down; had a feel of; went through; going through; felt all over; checkd; had a good look at; checked over; felt along; vet looked at; vetted',
  ],
  [
    'act',
    'trimmed',
    'trimmed; trim; trims; trimming; clipped; clip; clips; clipping; cut back; cut nails; filed; file; filing; clipped back; trimmed back; cut her nails; cut his nails; cut their nails; cut the nails; nail trim; nail trims; dremeled; dremel; snipped; snip; snipped off; trimmed up; did nails; did her nails; did his nails; did their nails; nipped off; nipped back; nails done; ground down; trimmed off; shaved; shortened; hair trimmed; did the nails; snipped back; cut off',
  ],
  [
    'act',
    'rested',
    'a day off; day off; the day off; rested; rest; rests; resting; resting up; rest up; day of rest; days off; take a day off; rest day; gets a day off; gets the day off; gets a rest; taking a break; off tomorrow; getting a rest; give a rest; gets tomorrow off; day off tomorrow; tomorrow off; laid off; layoff; light duty; gets a break; sit tomorrow; sits tomorrow; stall rest; gets rest; a few days off; a couple days off; the week off; gets a couple days off; gets a few days off; couple of days off; gets the week off; gets two days off; two days off; three days off; take it easy; on rest; rest him; rest her; a couple of days off; couple days off; a week off; some time off; time off; a rest; a rest day; rested up; the morning off; the afternoon off',
  ],
];
