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
tightened-winter-fog-is-wet-air = It stays at { $first }. Air at 80 % dries nothing.
tightened-winter-fog-is-wet-air-reply = It would stay at { $first } only if fresh air took nothing along. With less of it the water stands higher: { $then }.
tightened-falls = It falls to { $fallen }, since less damp air comes in.
tightened-falls-reply = The air that comes in has less water than the house, not more. With less of it RH does not fall to { $fallen }, it goes up to { $then }.
tightened-house-must-breathe = To 100 %. A tight house always drips.
tightened-house-must-breathe-reply = With { $after } it comes to { $then }. A fan that runs sets the number.
milder-why = Milder air brings more water in at the same RH, so the room ends at { $then }.
milder-ask = A house holds { $humidity } at { $cold } and 80 % outside, with { $cfm } of fresh air. Now it is { $mild } and 80 % outside. Same family, same fan, { $room } inside. Where does indoor RH settle?
milder-hint = Raise the outdoor temperature on the page. How much vapor does the fresh air bring in now?
milder-rh-alone-reply = The RH outside is the same, but the water in that air is not. Write the temperature too.
milder-outdoor-rh-reply = The 80 % is at the outdoor temperature. Inside the air is warmer and has its own RH.
milder-heating-dries-the-air-reply = The heat takes no water away. There is more of it in the mild air, so it is { $then }.
wet-windows-why = With { $fan } of fresh air the same house would sit at { $after }. Those edges fog from { $edge } on.
wet-windows-ask = It is { $cold } outside, the room is { $room } and { $humidity }, and the edges of the double panes run with water. What do you do first?
wet-windows-hint = What has to be true at the glass for water to form there? Which of these changes that for good?
wet-windows-right = Cut the sources of water and run the fan.
wet-windows-heating-dries-the-air = Turn up the heat.
wet-windows-heating-dries-the-air-reply = Heat lowers RH but takes no water away. The dew point stays.
wet-windows-winter-fog-is-wet-air = Seal the fan, so that no damp outdoor air comes in.
wet-windows-treats-the-sign = Wipe the glass and caulk the frames.
task-no-fresh-air = Fresh air is { $fresh_air } m³/s; it must be above 0 m³/s.
task-outcome = The room settles at { $humidity } with { $fresh_air } of fresh air; the edge of the pane fogs from { $edge } on.

## The picture

key-water = water per day, wider = more
full = 100 % RH
people = people
outdoors = outdoors
leaving = leaving
key-glass = middle of the glass
key-made = { $water } made
key-edge = edge of the pane fogs above
axis-fresh-air = fresh air, { $unit }
axis-humidity = indoor RH, %
alt-clear = The pane is clear.
alt-edge-fogs = The edge of the pane fogs, the middle of the glass is clear.
alt-runs = The whole pane runs with water.
alt-full = The air is at 100 %, and the tank runs over.
alt-tank = A house as a tank of water. People bring in { $people }, outdoor air brings { $outside }, and the air that leaves carries { $away }.
alt-stands = With { $fresh_air } of fresh air the tank stands at { $humidity } RH; the edge of the pane fogs at { $edge }, the middle of the glass at { $glass }.
