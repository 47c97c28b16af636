### Units and numbers: their signs, and how a number is written.

## A number: its two marks, where it is shown. What is typed and what stands in files has a plain hyphen.

decimal-mark = .
minus-sign = −
infinite = inf
no-number = nan

## Each unit: its sign alone, as on an axis, and a number with it.

# temperature
sign-degC = °C
amount-degC = { $number } °C
sign-degF = °F
amount-degF = { $number } °F
# temperature difference
sign-K = K
amount-K = { $number } K
sign-degF-difference = °F
amount-degF-difference = { $number } °F
# relative humidity
sign-fraction = { "" }
amount-fraction = { $number }
sign-percent = %
amount-percent = { $number } %
# length
sign-m = m
amount-m = { $number } m
sign-cm = cm
amount-cm = { $number } cm
sign-mm = mm
amount-mm = { $number } mm
sign-ft = ft
amount-ft = { $number } ft
sign-in = in.
amount-in = { $number } in.
# angle
sign-degrees = degrees
amount-degrees = { $number } degrees
# area
sign-m2 = m²
amount-m2 = { $number } m²
sign-cm2 = cm²
amount-cm2 = { $number } cm²
sign-ft2 = ft²
amount-ft2 = { $number } ft²
sign-in2 = in²
amount-in2 = { $number } in²
# volume
sign-m3 = m³
amount-m3 = { $number } m³
sign-L = L
amount-L = { $number } L
sign-mL = mL
amount-mL = { $number } mL
sign-ft3 = ft³
amount-ft3 = { $number } ft³
sign-fl-oz = fl oz
amount-fl-oz = { $number } fl oz
sign-pint = pint
amount-pint = { $number } pint
sign-quart = quart
amount-quart = { $number } quart
sign-gallon = gallon
amount-gallon = { $number } gallon
# mass
sign-kg = kg
amount-kg = { $number } kg
sign-g = g
amount-g = { $number } g
sign-lb = lb
amount-lb = { $number } lb
sign-gr = gr
amount-gr = { $number } gr
# density
sign-kg-per-m3 = kg/m³
amount-kg-per-m3 = { $number } kg/m³
sign-g-per-m3 = g/m³
amount-g-per-m3 = { $number } g/m³
sign-lb-per-ft3 = lb/ft³
amount-lb-per-ft3 = { $number } lb/ft³
sign-gr-per-ft3 = gr/ft³
amount-gr-per-ft3 = { $number } gr/ft³
# area density
sign-kg-per-m2 = kg/m²
amount-kg-per-m2 = { $number } kg/m²
sign-g-per-m2 = g/m²
amount-g-per-m2 = { $number } g/m²
sign-lb-per-ft2 = lb/ft²
amount-lb-per-ft2 = { $number } lb/ft²
sign-gr-per-ft2 = gr/ft²
amount-gr-per-ft2 = { $number } gr/ft²
# pressure
sign-Pa = Pa
amount-Pa = { $number } Pa
sign-hPa = hPa
amount-hPa = { $number } hPa
sign-kPa = kPa
amount-kPa = { $number } kPa
sign-inHg = in. Hg
amount-inHg = { $number } in. Hg
sign-inH2O = in. w.c.
amount-inH2O = { $number } in. w.c.
sign-psi = psi
amount-psi = { $number } psi
# humidity ratio
sign-kg-per-kg = kg/kg
amount-kg-per-kg = { $number } kg/kg
sign-g-per-kg = g/kg
amount-g-per-kg = { $number } g/kg
sign-gr-per-lb = gr/lb
amount-gr-per-lb = { $number } gr/lb
# permeance
sign-kg-per-s-m2-Pa = kg/(s m² Pa)
amount-kg-per-s-m2-Pa = { $number } kg/(s m² Pa)
sign-ng-per-s-m2-Pa = ng/(s m² Pa)
amount-ng-per-s-m2-Pa = { $number } ng/(s m² Pa)
sign-perm = perm
amount-perm = { $number } perm
sign-sd-m = m sd
amount-sd-m = { $number } m sd
# permeability
sign-kg-per-s-m-Pa = kg/(s m Pa)
amount-kg-per-s-m-Pa = { $number } kg/(s m Pa)
sign-ng-per-s-m-Pa = ng/(s m Pa)
amount-ng-per-s-m-Pa = { $number } ng/(s m Pa)
sign-perm-in = perm-in.
amount-perm-in = { $number } perm-in.
sign-mu = µ
amount-mu = { $number } µ
# thermal resistance
sign-m2-K-per-W = m² K/W
amount-m2-K-per-W = { $number } m² K/W
sign-R = R
amount-R = R-{ $number }
# thermal transmittance
sign-W-per-m2-K = W/(m² K)
amount-W-per-m2-K = { $number } W/(m² K)
sign-Btu-per-h-ft2-F = Btu/(h ft² °F)
amount-Btu-per-h-ft2-F = { $number } Btu/(h ft² °F)
# conductivity
sign-W-per-m-K = W/(m K)
amount-W-per-m-K = { $number } W/(m K)
sign-Btu-in-per-h-ft2-F = Btu in./(h ft² °F)
amount-Btu-in-per-h-ft2-F = { $number } Btu in./(h ft² °F)
sign-R-per-in = R per in.
amount-R-per-in = { $number } R per in.
# liquid conductivity
sign-s-of-suction = s
amount-s-of-suction = { $number } s
# specific heat
sign-J-per-kg-K = J/(kg K)
amount-J-per-kg-K = { $number } J/(kg K)
sign-Btu-per-lb-F = Btu/(lb °F)
amount-Btu-per-lb-F = { $number } Btu/(lb °F)
# enthalpy
sign-J-per-kg = J/kg
amount-J-per-kg = { $number } J/kg
sign-kJ-per-kg = kJ/kg
amount-kJ-per-kg = { $number } kJ/kg
sign-Btu-per-lb = Btu/lb
amount-Btu-per-lb = { $number } Btu/lb
# specific volume
sign-m3-per-kg = m³/kg
amount-m3-per-kg = { $number } m³/kg
sign-ft3-per-lb = ft³/lb
amount-ft3-per-lb = { $number } ft³/lb
# heat flux
sign-W-per-m2 = W/m²
amount-W-per-m2 = { $number } W/m²
sign-Btu-per-h-ft2 = Btu/(h ft²)
amount-Btu-per-h-ft2 = { $number } Btu/(h ft²)
# vapor flux
sign-kg-per-s-m2 = kg/(s m²)
amount-kg-per-s-m2 = { $number } kg/(s m²)
sign-g-per-m2-per-day = g/m² day
amount-g-per-m2-per-day = { $number } g/m² day
sign-gr-per-ft2-per-day = gr/ft² day
amount-gr-per-ft2-per-day = { $number } gr/ft² day
sign-gr-per-ft2-per-h = gr/ft² h
amount-gr-per-ft2-per-h = { $number } gr/ft² h
# mass flow
sign-kg-per-s = kg/s
amount-kg-per-s = { $number } kg/s
sign-kg-per-day = kg/day
amount-kg-per-day = { $number } kg/day
sign-g-per-h = g/h
amount-g-per-h = { $number } g/h
sign-lb-per-day = lb/day
amount-lb-per-day = { $number } lb/day
sign-pint-per-day = pints/day
amount-pint-per-day = { $number } pints/day
# air flow
sign-m3-per-s = m³/s
amount-m3-per-s = { $number } m³/s
sign-m3-per-h = m³/h
amount-m3-per-h = { $number } m³/h
sign-L-per-s = L/s
amount-L-per-s = { $number } L/s
sign-cfm = cfm
amount-cfm = { $number } cfm
# speed
sign-m-per-s = m/s
amount-m-per-s = { $number } m/s
sign-ft-per-min = ft/min
amount-ft-per-min = { $number } ft/min
sign-mph = mph
amount-mph = { $number } mph
# air changes at 50 Pa
sign-ACH50 = 1/h
amount-ACH50 = { $number } 1/h
# vent opening
sign-m2-per-m = m²/m
amount-m2-per-m = { $number } m²/m
sign-cm2-per-m = cm²/m
amount-cm2-per-m = { $number } cm²/m
sign-in2-per-ft = in²/ft
amount-in2-per-ft = { $number } in²/ft
# air change
sign-n-1-per-s = 1/s
amount-n-1-per-s = { $number } 1/s
sign-n-1-per-h = 1/h
amount-n-1-per-h = { $number } 1/h
# time
sign-s = s
amount-s = { $number } s
sign-h = h
amount-h = { $number } h
sign-day = days
amount-day = { $number } days

## Units that only stand in what is said of a value out of its range.

sign-m3-per-s-m2 = m³/(s m²)
sign-kg-per-m2-s-0-5 = kg/(m² s^0.5)
sign-mass-percent = mass %

## The same amount twice: $own in the reader's unit system, or in that of the trade where no reader is known.

in-both = { $own } ({ $other })

## Amounts that the trade writes in its own way.

# A thermal resistance in SI.
rsi = RSI { $number }
# A slope: its rise in a run of 12, or degrees.
pitch = { $rise }/12
slope = { $degrees }°
# Free area of vent openings for a length of eave or ridge.
opening-us = { $area } per foot
opening-si = { $area } per meter
# Water that ran off, as a bucket holds it, from a roof of $area; in US units it is one of the two below.
liquid = { $water } from { $area }
pints = { $number } pints
fluid-ounces = { $number } fl oz
# Amounts that can be pictured. $one: whether the number reads 1; $water is one of the amounts, $area a roof's.
so-many-pints = { $one ->
        [yes] { $number } pint
       *[no] { $number } pints
    }
so-many-gallons = { $one ->
        [yes] { $number } gallon
       *[no] { $number } gallons
    }
less-than = less than { $amount }
on-a-roof = { $water } a day on { $area } of roof
buckets = { $one ->
        [yes] { $number } bucket of { $size }
       *[no] { $number } buckets of { $size }
    }
in-a-winter = { $water } on { $area } of roof in a winter of { $days } such days
# $wood is a thickness.
in-wood = { $one ->
        [yes] { $number } point of wood moisture in { $wood } of wood
       *[no] { $number } points of wood moisture in { $wood } of wood
    }
# $fan is what it carries in an hour or a minute.
fan-days = { $one ->
        [yes] { $number } day of a bath fan at { $fan }
       *[no] { $number } days of a bath fan at { $fan }
    }
fan-hours = { $one ->
        [yes] { $number } hour of a bath fan at { $fan }
       *[no] { $number } hours of a bath fan at { $fan }
    }
fan-minutes = { $one ->
        [yes] { $number } minute of a bath fan at { $fan }
       *[no] { $number } minutes of a bath fan at { $fan }
    }
fan-carries-none = more than a bath fan at { $fan } ever carries off, since the air outdoors has as much vapor
# Said once wherever amounts of water are printed.
grain-of-water = gr is a grain of water: 7000 gr = 1 lb, 1 gr = 0.065 g.

## What is said of a quantity. $quantity is a noun of names.ftl.

too-large = The { $quantity } { $text } is too large a number to work with.
must-be-a-number = The { $quantity } must be a number, not { $given }.
