/**
 * What a thumb types for a word, and the word it stands for. Tokens are read as the word; the text stays as it was written.
 * Short forms of the trade itself (LF, BCS, wt) stand in the tables of their subjects.
 */
const pairs = (s: string): [string, string][] => s.split(';').map((p) => p.trim().split(/\s*=\s*/) as [string, string]);

export const SHORT_FORMS: ReadonlyMap<string, string> = new Map(
  pairs(
    `thru=through; tho=though; thou=though; altho=although; cuz=because; coz=because; bc=because; bcos=because; cos=because; becuz=because;
     u=you; ur=your; yr=your; xcept=except; xcpt=except; cept=except; ceptin=except; wk=week; wks=weeks; yest=yesterday; yday=yesterday; ystrdy=yesterday;
     b4=before; abt=about; bf=before; aft=after; everbody=everybody; evrybody=everybody; evryone=everyone; evrything=everything;
     ppl=people; rly=really; rlly=really; vry=very; pls=please; thx=thanks; def=definitely; defo=definitely; prolly=probably; probs=probably;
     mebbe=maybe; bin=been; wuz=was; sez=says; gotta=got to; outta=out of; lotta=lot of; kno=know; nite=night; tonite=tonight; tonght=tonight;
     btw=by the way; fwiw=anyway; lookin=looking; limpin=limping; pullin=pulling; runnin=running; eatin=eating; drinkin=drinking;
     goin=going; doin=doing; lickin=licking; chewin=chewing; favorin=favoring; bleedin=bleeding; feelin=feeling; gettin=getting;
     takin=taking; puttin=putting; startin=starting; comin=coming; leadin=leading; actin=acting; bein=being; movin=moving; barkin=barking;
     screamin=screaming; draggin=dragging; pantin=panting; shiverin=shivering; shakin=shaking; hangin=hanging; workin=working; nothin=nothing;
     anythin=anything; somethin=something; mornin=morning; evenin=evening; swellin=swelling; stayin=staying; havin=having; tryin=trying; et=ate; excepting=except;
     wit=with; wi=with; nae=no; verra=very; wiht=with; fom=from; frm=from; boht=both; teh=the; hte=the; adn=and; hme=home; hom=home; jumpd=jumped; lickd=licked; limpd=limped; pulld=pulled;
     chewd=chewed; walkd=walked; lookd=looked; coughd=coughed; barkd=barked; barfd=barfed; loadd=loaded; dropd=dropped; trotd=trotted; refusd=refused; finishd=finished; stretchd=stretched; massagd=massaged;
     sl=slightly; diff=different; gd=good; bth=both; frt=front; dist=distance; lvd=left; dptd=left; rtnd=returned; w8=weight; every1=everyone; evry1=everyone; ev1=everyone; some1=someone; sum1=someone; any1=anyone; gr8=great; l8=late;
     2day=today; 2nite=tonight; 2night=tonight; 2moro=tomorrow; 2morrow=tomorrow; 2mrw=tomorrow; tmrw=tomorrow; tmrrw=tomorrow; tmw=tomorrow; tmr=tomorrow; 2gether=together; ystrday=yesterday; evry=every; r8=right; nxt=next; smwht=somewhat`,
  ).filter(([, long]) => !long.includes(' ')),
);

const set = (s: string): ReadonlySet<string> => new Set(s.split(' '));

/** Words cut short with a point that ends no sentence, for something always follows them. */
export const POINTED_SHORT = set(
  'exc excl incl approx abt temp temps wt wts avg ave poss prob sl v w dep arr ret lv lvd dist esp usu occ resp vs dr lt rt fr chk mod sev bilat',
);
/** A side cut short to its letter, before a part: "L. wrist", "R. shldr". */
export const PART_BEGINS =
  /^(wrist|carpus|shoulder|shldr|shld|elbow|tricep|biceps|hip|hock|knee|stifle|thigh|leg|foot|paw|pad|web|toe|nail|dewclaw|ear|eye|groin|armpit|front|hind|fore|rear)s?$/;
