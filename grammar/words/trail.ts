/** Trail and weather, one value a phrase. Words that could be something else carry `-weak` and need a trail or sky about. */
import type { Row } from './table.ts';

export const trail: readonly Row[] = [
  [
    'surface',
    'icy',
    'icy; glare ice; glare; ice; glaze; glazed; glazed over; skating rink; a skating rink; rink; glass; black ice; iced over; polished ice; iced; sheet ice; sheet of ice; mirror of ice; mirror ice; ice like a mirror; pane of ice; bare ice; slick; slippery; ice rink; blue ice; like glass; boilerplate; slick as glass; ice sheet; icey; glassy; ice on the trail; ice under; ice patches; patches of ice; lake ice; river ice; hard ice; icy patches; where ice; glare eyes; glared ice; jagged ice; jumble ice; skatey; greasy; sheet of glass; big sheet of glass; one sheet of glass; pure ice; nothing but ice; solid ice; sheer ice; all ice; on top of ice; over ice',
  ],
  [
    'surface',
    'hard',
    'hardpack; hard pack; hardpacked; hard packed; hard as a rock; rock hard; hard as concrete; concrete; set up hard; set up; packed; set up solid; packed hard; hard as rock; hard trail; firm; firmed up; setting up; hard as iron; packed down; well packed; set up nice; set up nicely; hard crust; crusty; crust; like concrete; like pavement; pavement; solid; packed trail; packed out; firm trail; frozen hard; hard as nails; hard snow; like cement; rock solid; set up firm; groomed hard; nice and firm; nice and hard; nice and solid; packed hard as rock; packed hard as; hard as a board; hard as a floor; like a floor; hard like a floor; like a highway; like a paved road; solid as a rock; baked hard; set like concrete; firm as; good and hard; good and firm',
  ],
  ['surface-weak', 'hard', 'hard'],
  [
    'surface',
    'soft',
    'soft; mushy; mush; softening; softened; soft trail; spongy; soft going; gone soft; going soft; mashed potatoes; squishy; soft snow; softer; loose; softening up; pillowy; rotten; mealy; soft as flour; soft as butter; soft as mush; soft as mashed potatoes; soft as porridge; like flour; like mashed potatoes; like porridge',
  ],
  [
    'surface',
    'punchy',
    "punchy; punching through; punched through; breaks through; breaking through; rotten crust; breakable crust; punching; crust gives way; crust breaking; punchy trail; post holing; postholing; crust won't hold; crust wouldn't hold; dogs punching; punches through; punchey; crust giving way; crust breaks; crust gave way; breakthrough crust; post hole; breaking the crust; won't hold; falling through the crust; punch through; punch; crust that breaks; crust that doesn't hold; crust collapses; keeps giving way; giving way under them; giving way under us; giving way underneath; gave way under them; breaking through the crust",
  ],
  [
    'surface',
    'sugar',
    'sugar; sugar snow; sugary; granular; loose granular; like sugar; corn snow; depth hoar; like sand; sugar trail; corn; grainy; ball bearings; sugery; loose sugar; faceted; facets; kernels; granulated; loose sugary; loose sugary stuff; loose sugary snow; like a bin of flax; like loose sand',
  ],
  [
    'surface',
    'fresh',
    'fresh; fresh snow; new snow; inches of fresh; fresh powder; powder; fresh on the trail; foot of fresh; fresh on; powdery; fresh inches; of fresh; of new; of new snow; unbroken; unbroken trail; breaking trail; broke trail; fresh dusting; new powder; inches of new; dusting of fresh; dusting; freshly fallen; fresh fall; skiff of snow; skiff of fresh; overnight snow; break trail; untracked; no broken trail; fluff; fresh cover; inches overnight; inches new; cm new; inches of new stuff; centimetres new; new stuff; a few inches new; new on the trail; couple of inches new; centimetres of fresh; overnight inches; new fallen snow; newly fallen; fresh snow on top; fresh on top',
  ],
  [
    'surface',
    'deep',
    'deep; deep snow; deep powder; belly deep; chest deep; knee deep; waist deep; wallowing; swimming in it; deep trail; thigh deep; hip deep; up to their bellies; up to their chests; deep going; swimming in; wallow; wallowed; deep fresh; up to the dogs bellies; elbow deep; hock deep; shoulder deep; boot deep; bottomless; over their backs; neck deep; to their bellies; to their elbows',
  ],
  [
    'surface',
    'drifted',
    "drifted; drifts; drift; drifting; drifted in; drifted over; blown in; blown over; drifted bad; drifted shut; windblown; wind blown; blown shut; snow drifts; snowdrifts; snowdrift; finger drifts; drifted in bad; wind drifts; drifty; drifting in; trail drifted; blown full; filled in; blowing in; blown in with; trail's blown in; windpacked; wind packed; wind slab; sastrugi; drifting over; trail is gone; blowing over; nothing but drifts; all drifts; one drift after another; drift after drift",
  ],
  [
    'surface',
    'slush',
    'slush; slushy; slush on top; wet slush; slushing; slushed; slop; sloppy; soup; soupy; slush underneath; slushes; wet mush; slushie; slurpy; wet trail; slush hole; slush holes; watery',
  ],
  [
    'surface',
    'overflow',
    'water lying on top; water lying on top of it; water standing on top; water standing on top of it; water standing on top of the ice; water standing on the ice; water standing on it; water sitting on top of it; water sitting on top of the ice; water sitting on it; water running on top; water running on top of the ice; water running over the ice; water pooling on top; water pooling on the ice; water on top of it; water on top of the snow; water lying on the ice; water lying on top of the ice; water sitting on the ice; water sitting on top; water across the ice; water across the trail; water pooled on the ice; overflow; over flow; overflows; open water; water on top; water on the ice; water over the ice; overflowing; water on the trail; standing water; wet crossing; seep; seeping; water running over; wet ice; aufeis; overflo; water on the river; water on the lake; water on top of the ice; flowing over the ice; creek was running over; water over ice',
  ],
  [
    'surface',
    'bare',
    'bare; bare ground; dirt; gravel; mud; muddy; tussocks; rocks; rocky; bare patches; bare spots; bare road; bare tundra; grass; sandy; bare dirt; no snow; grassy; sticks; snowless; exposed; bare gravel; thin cover; thin snow; low snow; melted out; bare trail; thin snow cover; asphalt; roots; rooty; rock; open ground; exposed rock; frozen ground; frozen dirt; showing through; grass showing; poking through',
  ],
  [
    'surface-weak',
    'bare',
    'sand; leaves; wet leaves; frozen mud; grass tussocks; tundra; pavement crossing; blacktop; stones; bare rock; burned off; melting',
  ],
  [
    'surface',
    'rough',
    'rough; bumpy; moguls; moguled; rutted; ruts; washboard; choppy; lumpy; holes; potholed; whoops; whoop de doos; chewed up; torn up; beat up; bumps; moose holes; footprints; rutty; moosed up; hummocks; hummocky; rough trail; rough going; rougher; jarring; mogully; mogul; sidehill; bone jarring; chunky; frozen footprints; lots of holes; pitted; chopped up; cut up; broken up; post holed; pock marked; moose post holes; postholed; moose tracks; rattled; rattly; chattery; jumbled; tore up; frozen ruts; like a washboard; knocked about; rough as a cob; rough as guts; rough as old boots; rough as a washboard; rough as anything; rough as all get out; rough as heck; bumpy as heck',
  ],
  [
    'surface',
    'fast',
    'fast; fast trail; zippy; quick; flying; lightning fast; super fast; running fast; real fast; racetrack; a racetrack; speedway; glides; gliding; great glide; faster; quick trail; fastest; like a rocket; good glide; super quick; greased lightning; speedy; zooming; nice and fast; quick as you like; fast as; lightning; slick and fast; fast as lightning',
  ],
  [
    'surface',
    'slow',
    'slow; slow going; slow trail; draggy; dragging; heavy going; heavy; sluggish; grindy; sticky; slower; slogging; slog; a slog; a grind; grind; hard going; slow as molasses; hauling through; tacky; poor glide; no glide; grabby; slow snow; heavy trail; molasses; sticking; wet and heavy; tough going; heavy snow underfoot; like glue; slowish; crawling; grinding; balling under the runners; slow as heck; slow as a snail; slow as mud; slow as cold molasses; like pulling through sand',
  ],
  [
    'surface',
    'good',
    "good; great; beautiful; perfect; excellent; lovely; nice; in good shape; in great shape; awesome; good going; superb; groomed; good trail; great trail; wonderful; well groomed; terrific; fantastic; in excellent shape; freshly groomed; smooth; pretty good; as good as it gets; like a dream; couldn't be better; in fine shape; ideal; fabulous; super; nice and smooth; good shape; amazing; best trail; mint; in good nick; a dream; in perfect shape; corduroy; prime; fine; just right; sweet; great shape; gorgeous; in nice shape; nice and even; in good order; in good condition; in excellent condition; in super shape; in lovely shape; in top shape; in good fettle; splendid; in great condition; beautifully groomed; freshly set; in the best shape; as good as it has been; best of the year; best all year; best of the season",
  ],
  [
    'trail-word',
    true,
    'tracks; trail; trails; track; going; surface; snow; path; road; route; footing; underfoot; river; lake; creek; ice; hill; ridge; summit; climb; pass; flats; swamp; portage; section; tundra; saddle; willows; crossing; downhill; uphill; conditions; trl; snowmachine trail; snow machine trail; ridgeline; slough; valley; bay; sea ice; field; fields; forest; woods; straightaway; corridor; stretch; cutbank; bank; crust; hillside; runners; base; switchbacks; gulch; canyon; draw; loop; pond; flat; marsh; bog; muskeg; dike; beach; shore; ground; runner; seismic line; bottom; top; trailhead; roadbed; grade; snowpack; logging road; two track; gravel pit; footpath; ski track; ski trail',
  ],
];

export const weather: readonly Row[] = [
  [
    'condition',
    'clear',
    "clear; sunny; blue sky; blue skies; clear sky; clear skies; sunshine; sun out; sun's out; sun is out; stars; starry; bluebird; cloudless; bright sun; sun; clear and cold; clear as a bell; bright and sunny; full sun; stars out; not a cloud; not a cloud in the sky; bright; sun came out; clearing; clearing up; cleared off; cleared up; full moon; moonlit; moonlight; northern lights; aurora; clear night; bluebird day; blue sky day; sunlit; skies are clear; big sun; sun's up; glorious sun; brilliant sun; sun shining; sun is shining; sun's shining; blazing sun; starlit; suns out; fair",
  ],
  [
    'condition',
    'cloudy',
    "cloudy; overcast; clouds; gray; grey; clouded over; cloud; gray sky; grey sky; gray skies; grey skies; socked in; low cloud; low clouds; clouding over; partly cloudy; clouding up; dull; ocast; high overcast; ovrcst; broken clouds; cloud cover; low ceiling; gloomy; mostly cloudy; clouds moving in; clouds rolling in; clouded; leaden; hazy; haze; thin overcast; high cloud; o'cast; overcast sky",
  ],
  [
    'condition',
    'flat-light',
    "flat light; flat lite; light's flat; light is flat; light was flat; light flat; light's gone flat; light has gone flat; light is really flat; light's really flat; light went flat; whiteout; white out; can't see the trail; couldn't see the trail; no definition; no contrast; light is so flat; light is pretty flat; light's pretty flat; milky light; light got flat; flat lighting; low contrast; light gone flat; poor contrast; no shadows; poor visibility; can't see the bumps; light's bad; light is bad; bad light; light goes flat; light getting flat; light's getting flat; milk bowl; can't tell snow from sky; light very flat; light is very flat; like the inside of a ping pong ball; inside of a milk jug; inside a milk bottle; lights flat; light's been flat; light is dead flat; lights gone flat; light's awful; light has gone; light is poor; light's poor; flat grey light; flat gray light; no depth to the light; couldn't see the ground; can't see the ground; can't see any bumps; couldn't make out the trail; can't make out the trail; no horizon; no telling sky from snow",
  ],
  [
    'condition',
    'snowing',
    "snowing; snows; snowed; snowfall; flurries; flurry; snow falling; snow coming down; light snow; heavy snow; snow showers; snow shower; spitting snow; spit snow; spits snow; spat snow; flakes; big flakes; fat flakes; dumping; snow started; snow squalls; snow squall; snowin; snow tonight; snow overnight; snow tomorrow; of snow overnight; snow in the forecast; chance of snow; snow coming; snow on the way; wet snow; snow coming in; snow moving in; steady snow; puking snow; light flurries; snow all day; snow all night; snow forecast; more snow; snow flurries; snow starting; it snowed; coming down hard; started to snow; starting to snow; might snow; will snow; to snow; snow's coming down; snow is coming down; snow is falling; snow's falling; graupel; sleeting snow; dusting down; snow pellets; snow grains; snow again; could snow; should snow; may snow; snow by noon; snow by tonight; snow by morning; snow by the morning; snow by evening; snow by midnight; snow by tomorrow; snow by nightfall; snow by night; snow by the evening; snow by the afternoon; snow by sundown; snow by afternoon; snow pouring down; snowflakes; snow sifting down; snowing sideways; snow in the air; inches of snow coming; calling for snow; snow predicted; snowy; foot of snow coming; foot of snow's coming; feet of snow coming; feet of snow; more snow coming; snow's coming; inches of snow's coming; snow due; snow's due; snow on its way; snow before dark; snow by dark; snow for tomorrow; foot of snow tonight; snow's on the way; flurrying; spitting; spitting a little snow; snow's starting; snow is starting; snow's started; snow has started; snow starts; snow's begun; snow's beginning; it's snow; snow pelting; snow pelting down; snow lightly; snowing lightly; snowing hard; snowing like mad; snowing to beat the band; starting to flurry; fine snow; inches of snow; centimetres of snow; centimeters of snow; cm of snow; in of snow; ten of snow",
  ],
  [
    'condition',
    'blowing',
    "blowing snow; snow blowing; ground blizzard; ground drift; blowing and drifting; spindrift; snow is blowing; snow's blowing; ground storm; blowing; blowin; drifting snow; snow blowing over; blowing across; snow snakes; snow was blowing; snow flying; blowing hard; blowin snow; snow blown; groundstorm; blown snow; snow snaking; snow's snaking; snow is snaking; snow smoking; drifting across; snow running across; snow streaming; snow drifting across; loose snow blowing; blowing sideways; snow blowing sideways; snow blowing across",
  ],
  [
    'condition',
    'windy',
    "windy; gusty; gusts; gusting; wind picked up; wind has picked up; wind's picked up; wind is up; wind's up; breezy; howling; wind howling; blustery; headwind; head wind; crosswind; cross wind; tailwind; tail wind; strong wind; stiff wind; stiff breeze; wind in our face; wind in our faces; wind picking up; wind came up; wind is picking up; blowing a gale; gale; nasty wind; wicked wind; cold wind; north wind; south wind; west wind; east wind; windier; wind was howling; wind is howling; wind's howling; wind bad; big wind; bit of wind; a breeze; breeze; light wind; light breeze; some wind; side wind; strong winds; wind blowing; wind's blowing; wind is blowing; wind hard; high wind; high winds; biting wind; bitter wind; squally; wind in the face; wind at our backs; wind got up; wind was up; wind gusts; wind gusting; wind from the north; wind from the south; wind from the west; wind from the east; northwest wind; northeast wind; northerly; wind out of the north; wind out of the west; wind out of the east; wind out of the south; wind on the lake; wind on the ridge; wind across the lake; wind in my face; wind in their faces; wind up; wind this; wind tonight; wind tomorrow; wind later; wind overnight; wind coming; more wind; wind strong; little wind; a little wind; lots of wind; a lot of wind; wind kicking up; wind kicked up; wind's kicking up; wind screaming; wind biting; wind roaring; blowing a bit; blowing pretty good; blowy; wind's getting up; wind getting up; wind whipping; wind's whipping; raw wind; steady wind; steady breeze; wind building; wind's building; wind rising; into the wind",
  ],
  [
    'condition',
    'calm',
    "calm; no wind; dead calm; still air; not a breath of wind; windless; still; dead still; no breeze; not a breath; calm as can be; flat calm; wind died; wind's died; wind died down; wind dropped; wind has dropped; wind quit; wind's quit; no wind at all; wind gone; not much wind; hardly any wind; wind laid down; wind's down; wind has died; wind's dropped; wind's died down; wind has died down; not a puff of wind; no wind to speak of; wind down; wind died off; wind let up; without a breath of wind; not a whisper of wind; wind is gone; wind's gone; without wind; barely a breath of wind; wind zero; zero wind; wind nil; wind calm; light and variable; air is still; air's still",
  ],
  [
    'condition',
    'fog',
    'fog; foggy; ice fog; mist; misty; freezing fog; fogged in; thick fog; fog bank; low fog; fogbound; ground fog; fogging; patchy fog; heavy fog; fog in; fog on; socked in with fog; dense fog; misting; fog rolled in; icefog; soup out there; pea soup',
  ],
  [
    'condition',
    'rain',
    'rain; raining; rained; drizzle; drizzling; drizzly; rainy; showers; pouring; sprinkling; sprinkles; pouring rain; light rain; rain shower; spitting rain; wet rain; raining lightly; sleet; sleeting; sprinkle; drizzled; shower; rain on snow; rain turning to snow; rains',
  ],
  [
    'condition',
    'freezing-rain',
    'freezing rain; freezing drizzle; ice storm; ice pellets; icing rain; rain freezing; rain freezing on everything; freezing mist; glaze ice falling; rain that freezes; rain is freezing; rain icing',
  ],
  [
    'condition',
    'storm',
    "storm; stormy; blizzard; storms; snowstorm; snow storm; storming; blizzarding; big storm; gale warning; storm warning; thunderstorm; blizzard warning; winter storm; ground blizzard warning; nor'easter; tempest; storm coming; storm front",
  ],
  [
    'forecast',
    true,
    "forecast; forecasts; forecasted; forecasting; calling for; supposed to; expected; expecting; expect; predicted; predicting; coming in; on the way; rolling in; moving in; heading our way; due; they say; they're saying; chance of; on its way; weather says; radio says; brewing; building; coming; later; in the forecast; weather service says; weather man says; by tonight; by tomorrow; by morning; looming; on the horizon; closing in; headed our way; headed this way; overnight; tonite; tonight",
  ],
];
