package calendar

import "encoding/hex"

// nameSpace is the UUID under which the identifiers of steps are made: the name-based UUID of
// "maslin.example.org" in the DNS name space.
var nameSpace = uuid5([16]byte{0x6b, 0xa7, 0xb8, 0x10, 0x9d, 0xad, 0x11, 0xd1, 0x80, 0xb4, 0x00, 0xc0, 0x4f, 0xd4,
	0x30, 0xc8}, "maslin.example.org")

// UID answers: under which identifier does a calendar know this step of this plan?
//
// A name-based UUID (version 5) of the plan's and the step's identifiers, in the 36-character form.
// The same two always give the same UID; it does not show what they were.
//
// Source: RFC 9562 (2024), section 5.5; RFC 7986 (2016), section 5.3.
func UID(plan, step string) string {
	u := uuid5(nameSpace, plan+"\x00"+step)
	h := hex.EncodeToString(u[:])
	return h[:8] + "-" + h[8:12] + "-" + h[12:16] + "-" + h[16:20] + "-" + h[20:]
}

func uuid5(space [16]byte, name string) [16]byte {
	sum := sha1(append(space[:], name...))
	var u [16]byte
	copy(u[:], sum[:])
	u[6] = u[6]&0x0f | 0x50
	u[8] = u[8]&0x3f | 0x80
	return u
}
