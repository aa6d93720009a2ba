/** Parts of the body, sides, ends and feet. Trade and anatomical words fold into the contract's parts. */
import type { Row } from './table.ts';

export const body: readonly Row[] = [
  [
    'part',
    'wrist',
    'wrist; wrists; carpus; carpal; carpals; carpi; wrist joint; rist; writs; joint above the paw; joint just above the paw; joint above his paw; joint above her paw; joint just above that paw; joint above that paw; joint above the foot; joint just above the foot; joint above that foot; joint just above his paw; joint just above her paw; joint above his foot; joint above her foot; wrist bone; wrist bones',
  ],
  [
    'part',
    'shoulder',
    'shoulder; shoulders; shldr; shldrs; shoulder blade; shoulder blades; shoulder muscle; shoulder muscles; scapula; scapulas; biceps tendon; bicep tendon; shld; shoulder joint; biceps; bicep',
  ],
  ['part', 'elbow', 'elbow; elbows; elbow joint; point of the elbow'],
  ['part', 'triceps', 'triceps; tricep; tri; tris; triceps muscle; triceps muscles'],
  [
    'part',
    'chest',
    'chest; chests; breastbone; sternum; brisket; pec; pecs; pectoral; pectorals; ribs; rib cage; ribcage',
  ],
  ['part', 'neck', 'neck; necks; throat; nape'],
  [
    'part',
    'back',
    'back; backs; flank; flanks; loin; loins; spine; lower back; topline; top line; withers; croup; back muscles; lumbar; back muscle; rump',
  ],
  ['part', 'hip', 'hip; hips; hip joint; glute; glutes; gluteal; pelvis'],
  ['part', 'knee', 'knee; knees; stifle; stifles; cruciate; kneecap; patella'],
  ['part', 'hock', 'hock; hocks; achilles; ankle; ankles; tarsus; achilles tendon; tarsal; tarsals'],
  [
    'part',
    'thigh',
    'thigh; thighs; hamstring; hamstrings; quad; quads; quadriceps; hammy; hammies; upper leg; gracilis',
  ],
  [
    'part',
    'groin',
    'groin; groins; inner thigh; inner thighs; iliopsoas; psoas; scrotum; testicles; sheath; vulva; teats; nipples',
  ],
  ['part', 'armpit', 'armpit; armpits; arm pit; arm pits; axilla; axillae; axillas; underarm; underarms; pit; pits'],
  ['part', 'tail', 'tail; tails; tail head; tail base; tailbone'],
  [
    'part',
    'leg',
    'leg; legs; limb; limbs; forelimb; forelimbs; hindlimb; hindlimbs; foreleg; forelegs; forearm; forearms; shin; shins; tendon; tendons; front end leg; flexor tendon',
  ],
  ['part', 'foot', 'foot; feet; paw; paws; pasterns; pastern; footsies; footed; feets; tootsies; ft'],
  [
    'part',
    'pad',
    'leathery part; leathery underside; leathery bottom; big pad; large pad; middle pad; centre pad; center pad; small pad; little pad; outside pad; inside pad; outer pad; inner pad; underside of; pad; pads; footpad; footpads; foot pad; foot pads; paw pad; paw pads; carpal pad; metacarpal pad; main pad; leathery part underneath; leather of his pad; leather of her pad; sole; soles; pads of his feet; pads of her feet; cushion; toe pad; toe pads; heel pad; heel pads; heel; bottom of the foot; bottom of the paw; bottom of his foot; bottom of her foot; bottom of his paw; bottom of her paw; bottoms of her feet; bottoms of his feet; underside of the paw; underneath of the paw',
  ],
  [
    'part',
    'web',
    'bit between the toes; bit between his toes; bit between her toes; bits between his toes; bits between her toes; bits between the toes; bit between its toes; skin between its toes; between its toes; skin between his toes; skin between her toes; skin between their toes; web; webs; webbing; webbings; webbed skin; interdigital; between the toes; between her toes; between his toes; between their toes; between toes; skin between the toes; toe webbing; toe webs',
  ],
  ['part', 'toe', 'toe; toes; digit; digits; knuckle; knuckles'],
  [
    'part',
    'nail',
    'nail; nails; fingernail; fingernails; finger nail; finger nails; toenail; toenails; toe nail; toe nails; claw; claws; nail bed; nailbed; nail beds; nailbeds; quick; cuticle; cuticles; nail base',
  ],
  [
    'part',
    'dewclaw',
    'little thumb claw; little thumb claws; little thumb; small thumb claw; thumb claw; thumb claws; thumb nail; thumbnail; dewclaw; dewclaws; dew claw; dew claws; dew',
  ],
  ['part', 'eye', 'eye; eyes; eyelid; eyelids; cornea'],
  ['part', 'ear', 'ear; ears; ear tip; ear tips; eartip; eartips; ear flap'],
  ['part', 'nose', 'nose; noses; muzzle; snout; nostril; nostrils; snoot'],
  ['part', 'mouth', 'mouth; mouths; lip; lips; tooth; teeth; tongue; jaw; cheek; fang; canine tooth'],

  // A part with its end said in one word
  [
    'end',
    'front',
    'front; fronts; fore; forefoot; forefeet; front end; forepaw; forepaws; foreleg; forelegs; forelimb; forelimbs; fr',
  ],
  [
    'end',
    'hind',
    'hind; hinds; rear; rears; back; backs; hind end; back end; rear end; behind; hindfoot; hindfeet; hind quarters; hindleg; hindlegs; hindlimb; hindlimbs; hindpaw; hindpaws',
  ],
  ['side', 'left', 'left; l; lt; left-hand; lefts; near side; left-side'],
  ['side', 'right', 'right; r; rt; right-hand; rights; off side; right-side; rite'],
  [
    'side',
    'both',
    'both; both of; both of his; both of her; both of their; each; pair of; both sides; bilateral; bilaterally; bilat; either; neither',
  ],
  [
    'paw',
    'LF',
    'lf; fl; l f; left front; left fore; front left; fore left; left forefoot; left forepaw; left foreleg; left frnt; lft frnt',
  ],
  [
    'paw',
    'RF',
    'rf; fr; r f; right front; right fore; front right; fore right; right forefoot; right forepaw; right foreleg; right frnt; rt frnt',
  ],
  [
    'paw',
    'LH',
    'lh; lr; hl; l h; left hind; left rear; left back; hind left; rear left; back left; left hindfoot; left hindleg',
  ],
  [
    'paw',
    'RH',
    'rh; rr; hr; r h; right hind; right rear; right back; hind right; rear right; back right; right hindfoot; right hindleg',
  ],
  [
    'paws',
    'fronts',
    'both fronts; both front; both forefeet; both front feet; both front paws; both front ones; both of his fronts; both of her fronts; both of her front; both of his front; fronts; the fronts; front pair; front feet; front paws; forefeet; the front ones; front ones; lf rf; lf and rf; lf n rf; rf and lf; lf/rf; lf & rf; lf + rf; two fronts; the two fronts; fronts only',
  ],
  [
    'paws',
    'hinds',
    'both hinds; both hind; both rears; both backs; both hind feet; both hind ones; both rear; both back feet; both of his hind; both of her hind; hinds; the hinds; rears; hind two; hind pair; hind feet; rear feet; back feet; hind paws; the hind ones; hind ones; back ones; lh rh; lh and rh; lh n rh; rh and lh; lh/rh; lh & rh; lh + rh; rear pair; back pair; the rears; the backs; both back; both rear feet; the hind two; two hinds; back paws',
  ],
  [
    'paws',
    'four',
    'all four; all 4; all four feet; all 4 feet; all four paws; all fours; all four of his feet; all four of her feet; all of his feet; all of her feet; every foot; four feet; each foot; all four of',
  ],
  [
    'anaphor',
    true,
    'that one; that foot; that paw; that leg; that same; that same leg; that same foot; the same; same foot; same leg; same one; same spot; the same one; the same foot; the same leg; there; it; this one; this foot; this leg; that web; that pad; that wrist; that nail; that toe; that shoulder; that; the same wrist; the same shoulder; same wrist; same shoulder; again; same paw; same place; the same spot; them; its; em; those',
  ],
];
