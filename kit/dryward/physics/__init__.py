"""What happens: steady states, months, hours, leaks, vents, sky and mold."""
