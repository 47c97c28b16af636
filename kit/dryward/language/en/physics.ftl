### Physics: what is said where a case cannot be worked out.

# Begins a sentence: "Water in deck is -3 kg/m³".
water-in = Water in { $layer }
# $what is a property, or a part of a leak.
least-factor = Least factor on the { $what }
largest-factor = Largest factor on the { $what }
