### Lesson 2: the winter house.

## The page

# $edge and $glass are R-values of the pane.
given = room { $room }, its walls as warm; edge of the pane { $edge }, middle of the glass { $glass }
indoor-humidity = Indoor humidity
indoor-humidity-over-warm = more than can stay vapor
indoor-humidity-over = the rest runs down the walls
dew-point = Dew point indoors
edge-limit = Edge of the window fogs at
edge-limit-warm = no glass is colder than the room
edge-limit-glass = the middle of the glass at { $glass }
outdoor-warmed = Outdoor air at { $room }
from-outside = Water from outdoors
runs-down = More water comes in than the fresh air can carry out: it runs down windows and walls.
too-damp-outdoors = Outdoor air with that much vapor in it has to be dried by the air conditioning, or drops form in the rooms. This page is for winter.
drops-all-over = More water comes in than the fresh air can carry out. No glass is cold, but drops form on all that is no warmer than the room. This page is for winter.
# $panes: what the window shows; $mold: whether mold can grow, and whether that is all, the panes being clear;
# $indoors: whether most of the water is made indoors.
settles = The house settles at { $humidity }, and { $panes ->
        [runs] the whole pane runs with water
        [fogs] the edge of the pane fogs while the middle stays clear
       *[clear] the panes stay clear
    }{ $mold ->
        [alone] , but mold can grow on any wall
        [too] , and mold can grow on any wall
       *[none] {""}
    }: { $indoors ->
        [yes] most of that water is made indoors
       *[no] most of that water comes in from outdoors
    }.
step-outdoors = Vapor pressure of the outdoor air.
# $one is a number: the pressure that one pint a day makes in one cubic foot a minute, or one kg a day in one m³ an hour.
step-people = What the people add: water made, over the fresh air that carries it. { $one } turns these units into pressure at { $room }.
step-humidity = Indoor humidity: both together, over the most at room temperature.
step-edge = The edge of the pane: down from the room by the share of its air film.
step-fogs = It fogs from here on: the most vapor pressure there, over the most at room temperature.

## The questions

tightened-why = Fresh air is the drain. With less of it the same water stands higher: { $then }.
tightened-ask = A family gives off { $kilograms } of water. It is { $cold } and 80 % outside, and fresh air falls from { $before } to { $after }. Where does indoor RH at { $room } go?
tightened-hint = Set the two amounts of fresh air on the page, one after the other. By which way does the house lose its water?
tightened-right = From { $first } up to { $then }.
tightened-winter-fog-is-wet-air = It stays at { $first }. Outdoor air at 80 % is wet air, and dries nothing.
tightened-winter-fog-is-wet-air-reply = It would stay at { $first } only if fresh air took nothing along. With less of it the water stands higher: { $then }.
tightened-falls = It falls to { $fallen }, since less damp air comes in.
tightened-falls-reply = The air that comes in has less water than the house, not more. With less of it RH does not fall to { $fallen }, it goes up to { $then }.
tightened-house-must-breathe = To 100 %. A house has to breathe, and a tight one rots.
tightened-house-must-breathe-reply = With { $after } it comes to { $then }. A fan that runs sets the number.
milder-why = Milder air brings more water in at the same RH, so the room ends at { $then }.
milder-ask = A house stands at { $humidity } at { $cold } and 80 % outside, with { $cfm } of fresh air. Now it is { $mild } and 80 % outside. Same family, same fan, { $room } inside. Where does indoor RH settle?
milder-hint = Raise the outdoor temperature on the page. How much vapor does the fresh air bring in now?
milder-same-rh-reply = The RH outside is the same, but the water in that air is not: mild air brings more in.
milder-outdoor-rh-reply = The 80 % is at the outdoor temperature. Inside the air is warmer and has its own RH.
milder-nothing-is-added-indoors-reply = { $alone } is that outdoor air, heated and no more. The family adds its water to it: { $then }.
july-why = More outdoor air brings more water in: { $first } against { $second }. In a sealed house a small fan brings what people need to breathe, and no more.
july-ask = It is { $hot } and { $humid } outside in July. Two houses are cooled to { $room } and kept at { $rh }. One is drafty, { $drafty } leak in. The other is sealed, and a fan brings in { $fan }. In which one must the cooling take out more water that comes from outdoors?
july-hint = Which way does outdoor air move the water of a house in July? Then look at how much of that air comes in.
july-right = In the drafty one. It lets in more of the damp air.
july-house-must-breathe = In the sealed one. A house has to breathe, and a tight one rots.
july-house-must-breathe-reply = People breathe, and the fan brings them their air. Each leak more brings more of the damp in: { $first } against { $second }.
july-rh-alone = In both the same, since both are kept at { $rh }.
july-rh-alone-reply = They are kept at the same RH, but not by the same work: { $first } have to be taken out of one, { $second } of the other.
wet-windows-winter-fog-is-wet-air-reply = That outdoor air is the drain. With { $fan } of it the same house would sit at { $after }, and those edges fog from { $edge } on.
wet-windows-treats-the-sign-reply = Wiped or caulked, the room is as damp as it was. With { $fan } of fresh air it would sit at { $after }, and those edges fog from { $edge } on.
wet-windows-why = With { $fan } of fresh air the same house would sit at { $after }. Those edges fog from { $edge } on.
wet-windows-ask = It is { $cold } outside, the room is { $room } and { $humidity }, and the edges of the double panes run with water. What do you do first?
wet-windows-hint = What has to be true at the glass for water to form there? Which of these changes that for good?
wet-windows-right = Cut the sources of water and run the fan.
wet-windows-heating-dries-the-air = Turn up the heat. It takes the water out of the air.
wet-windows-heating-dries-the-air-reply = Heat lowers RH but takes no water away. The dew point stays.
wet-windows-winter-fog-is-wet-air = Seal the fan, so that no damp outdoor air comes in.
wet-windows-treats-the-sign = Wipe the glass and caulk the frames.
burner-why = Propane burns to more than its own weight in water: { $water } from a bottle of { $bottle }. And an open flame indoors can kill by carbon monoxide.
burner-ask = A basement with fresh plaster has to dry in spring. The crew burns { $bottle } of propane a day there, in an open burner. What does the burner do to the water in that air?
burner-hint = What comes out of the flame besides heat? Look at the dew point, not at the RH.
burner-right = It adds { $water } of water a day.
burner-propane-heater-dries = It takes water out. A propane heater dries the job.
burner-nothing-is-added-indoors = Nothing. The same air is heated, and no more.
burner-nothing-is-added-indoors-reply = Electric heat would do that. A flame adds its own water: { $water } a day.
task-no-fresh-air = Fresh air is { $fresh_air } m³/s; it must be above 0 m³/s.
task-outcome = The room settles at { $humidity } with { $fresh_air } of fresh air; the edge of the pane fogs from { $edge } on.

## The beats

stage-outdoors = Outdoors: { $temperature }, { $humidity }
# $job: on a job site, in place of a family.
stage-tap = { $job ->
        [yes] mud and crew: { $water }
       *[no] people: { $water }
    }
stage-fan-off = fan off
stage-before = was { $humidity }
stage-level = indoor RH { $humidity }
stage-limit = glass edge fogs: { $humidity }
stage-roof = In the roof, a winter: { $water }
stage-dew-point = dew point { $dew }
stage-flame = flame: { $water }
beat-first-say = Raw, gray air comes in twice as fast. Where does the indoor level go?
beat-first-ask = Take a place in the picture, or choose from the list.
beat-first-first = Now: { $slow } of fresh air
beat-first-second = Fan up: { $fast }
beat-first-answer = Down, from { $before } to { $after }. People make { $makes }, the fresh air brings { $brings } and takes { $carries } out.
beat-first-also = Warmed up, that outdoor air alone would be at { $alone }.
beat-breathe-say = Leaks leave { $drafty_roof } a winter in the roof of a drafty house. Now it is sealed.
beat-breathe-ask = Bet on both before you see either: more in the roof, or less?
beat-breathe-first = Sealed, no fan
beat-breathe-second = Sealed, and a fan
beat-breathe-closed-ask = A house of { $volume } went from { $drafty_ach } to { $sealed_ach } ACH50, and there is no fan. How much does the roof take in?
beat-breathe-closed-more = More. The water of the house stays in.
beat-breathe-closed-less = Less. Most of the leaks are gone.
beat-breathe-closed-more-reply = { $closed_roof }. Less air leaks out, but it is at { $closed } RH, not { $drafty }. What is missing is a fan, not the leaks: look at the second house, just as tight.
beat-breathe-closed-less-reply = Less air does leak out. But with no fan the water stays in: { $closed } RH, not { $drafty }. So the roof takes in { $closed_roof }.
beat-breathe-fan-ask = The same sealed house, and a fan blows { $fan } out all day. How much now?
beat-breathe-fan-more = More. A house has to breathe, a tight one rots.
beat-breathe-fan-less = Less. The fan is the drain.
beat-breathe-fan-more-reply = Just as tight, and it takes in the least: { $fan_roof }. The fan carries the water out: { $with_fan } RH. It also pulls against the leak at the ridge.
beat-breathe-fan-less-reply = The fan carries the water out: { $with_fan } RH. It also pulls against the leak at the ridge. The roof takes in { $fan_roof }.
beat-breathe-answer = Sealed, no fan: { $closed_roof }. Drafty: { $drafty_roof }. Sealed with a fan: { $fan_roof }.
beat-breathe-also = Indoor RH: { $closed }, { $drafty } and { $with_fan }. The drafty house has dry air, not a dry roof. Counted: { $days } days, and a tenth of the air at the ridge leaves its water there.
beat-fan-say = It is { $cold } out, and the edge of the glass is wet. Run the fan.
beat-fan-ask = Turn the fan up until the edge is clear. Watch the level, and the arrows on the left wall.
beat-fan-control = Fresh air, by leaks and fan
beat-fan-answer = At { $fresh } the level is { $humidity }, and the edge fogs from { $edge }. { $over ->
        [yes] Now all leaks blow inward, even at the ridge.
       *[no] The neutral level rose from { $was } to { $neutral }: below it all leaks blow inward.
    }
beat-fan-also = The fan blows out { $fan }. Its pull can draw flue gas back in: have the draft of every flue tested.
beat-heater-say = The same heat on two jobs alike. Does it dry both?
beat-heater-ask = Bet on both before you see either.
beat-heater-care = An open flame indoors can kill by carbon monoxide and start a fire. It takes fresh air, an alarm, and the maker's steps.
beat-heater-first = Three electric heaters, 1500 W each
beat-heater-second = Open propane burner, same heat
beat-heater-electric-ask = Mud and crew give off { $job }. Where does the RH of the job end with electric heat?
beat-heater-electric-low = Under { $low }. Heat and fresh air dry the job.
beat-heater-electric-high = Over { $high }.
beat-heater-electric-low-reply = { $electric } RH. This heat adds no water, so the dew point is only { $electric_dew }.
beat-heater-electric-high-reply = Mud and crew do add water, but the fresh air takes it out: { $electric } RH, dew point { $electric_dew }.
beat-heater-burner-ask = And with the burner?
beat-heater-burner-low = Under { $low }. A propane heater dries the job.
beat-heater-burner-high = Over { $high }.
beat-heater-burner-low-reply = It is just as warm, so it feels as dry. But propane burns to 1.6 times its own weight in water: { $adds } a day. The RH ends at { $burner }, and the dew point at { $burner_dew }.
beat-heater-burner-high-reply = Propane burns to 1.6 times its own weight in water, { $adds } a day. The RH ends at { $burner }, and the dew point at { $burner_dew }.
beat-heater-answer = The same heat, { $electric } and { $burner }. The burner poured { $adds } a day into the job.
beat-heater-also = Dew point { $electric_dew } and { $burner_dew }. The edge of the glass fogs from { $edge }.

## The picture

key-water = water a day, wider = more, up to { $most }
full = 100 % RH
people = people
outdoors = outdoors
leaving = leaving
stays = drops: { $water }
alt-stays = The other { $water } stay in the house as drops.
key-glass = middle of the glass
key-made = { $water } made
key-edge = edge of the pane fogs above
axis-fresh-air = fresh air, { $unit }
axis-humidity = indoor RH, %
alt-clear = The pane is clear.
alt-edge-fogs = The edge of the pane fogs, the middle of the glass is clear.
alt-runs = The whole pane runs with water.
alt-full = The air is at 100 % RH, and the tank runs over.
alt-tank = A house as a tank of water. People bring in { $people }, outdoor air brings { $outside }, and the air that leaves carries { $away }.
alt-stands = With { $fresh_air } of fresh air the tank stands at { $humidity } RH; the edge of the pane fogs at { $edge }, the middle of the glass at { $glass }.
